using System.Globalization;
using Microsoft.CodeAnalysis.Diagnostics;

namespace Momentum.Analyzers.Inference;

/// <summary>What a project sets in its <c>.editorconfig</c>.</summary>
internal sealed class Options
{
    internal const string NamesKey = "momentum_unit_names";
    internal const string DepthKey = "momentum_unit_call_depth";
    internal const string BlocksKey = "momentum_unit_flow_blocks";

    internal Options(AnalyzerConfigOptions options)
    {
        ReadNames = Choice(options, NamesKey, otherwise: true);
        CallDepth = Number(options, DepthKey, otherwise: 2, most: 4);
        FlowBlocks = Number(options, BlocksKey, otherwise: 400, most: 10000);
    }

    /// <summary>Whether a name's suffix is evidence.</summary>
    internal bool ReadNames { get; }

    /// <summary>How many calls deep to look into methods of the compilation; 0 stays inside each method.</summary>
    internal int CallDepth { get; }

    /// <summary>Bodies with more basic blocks than this are not analysed; 0 turns inference off.</summary>
    internal int FlowBlocks { get; }

    /// <summary>The settings that could not be read, each with what it may be.</summary>
    internal List<(string Key, string Text, string Allowed)> Unread { get; } = [];

    private bool Choice(AnalyzerConfigOptions options, string key, bool otherwise)
    {
        if (!options.TryGetValue(key, out string? text))
        {
            return otherwise;
        }

        switch (text.Trim().ToLowerInvariant())
        {
            case "true":
                return true;
            case "false":
                return false;
            default:
                Unread.Add((key, text, "true or false"));
                return otherwise;
        }
    }

    private int Number(AnalyzerConfigOptions options, string key, int otherwise, int most)
    {
        if (!options.TryGetValue(key, out string? text))
        {
            return otherwise;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number <= most)
        {
            return number;
        }

        Unread.Add((key, text, $"a whole number from 0 to {most}"));
        return otherwise;
    }
}
