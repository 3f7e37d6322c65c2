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
        ReadNames = !options.TryGetValue(NamesKey, out string? names) || !string.Equals(names, "false", StringComparison.OrdinalIgnoreCase);
        CallDepth = Number(options, DepthKey, otherwise: 2, most: 4);
        FlowBlocks = Number(options, BlocksKey, otherwise: 400, most: 10000);
    }

    /// <summary>Whether a name's suffix is evidence.</summary>
    internal bool ReadNames { get; }

    /// <summary>How many calls deep to look into methods of the compilation; 0 stays inside each method.</summary>
    internal int CallDepth { get; }

    /// <summary>Bodies with more basic blocks than this are not analysed; 0 turns inference off.</summary>
    internal int FlowBlocks { get; }

    private static int Number(AnalyzerConfigOptions options, string key, int otherwise, int most) =>
        options.TryGetValue(key, out string? text) && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? Math.Min(number, most)
            : otherwise;
}
