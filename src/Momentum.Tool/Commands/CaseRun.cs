using System.CommandLine;
using System.Globalization;
using Momentum.Cases.Answers;

namespace Momentum.Tool.Commands;

/// <summary>What the verbs that compute have in common: read the case, solve it, present the answer, say how it came out.</summary>
internal static class CaseRun
{
    /// <summary>Runs one of them.</summary>
    /// <param name="streams">Where to read and write.</param>
    /// <param name="path">The case file.</param>
    /// <param name="json">Whether errors are written as JSON.</param>
    /// <param name="spread">How the dispersion is run.</param>
    /// <param name="present">Writes the answer.</param>
    /// <returns>The exit code.</returns>
    public static int Of(Streams streams, string path, bool json, SpreadOptions spread, Action<Answer> present)
    {
        var judgement = Judgement.Of(CaseFile.Read(path, streams.Input));
        if (judgement.HasErrors)
        {
            Messages.Write(streams, judgement.Problems, ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        Answer answer;
        try
        {
            answer = ProgressLine.Of(
                streams, $"{spread.Cases} cases", spread.Cases > 5 * SpreadOptions.UsualCases, progress => Solver.Solve(judgement, spread, progress));
        }
        catch (ArgumentException refusal)
        {
            Messages.Write(streams, $"{judgement.Reading.File}: {refusal.Message}", "Check the values and their units.", ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        present(answer);
        if (!json)
        {
            Messages.WriteRemarks(streams, answer.Warnings, judgement.Reading.NotUsedYet);
        }

        return (int)(answer.AllMet ? ExitCode.Done : ExitCode.RequirementNotMet);
    }

    /// <summary>The options of the dispersion.</summary>
    public static (Option<int> Cases, Option<ulong> Seed) SpreadOptionsOf(Command command)
    {
        const int Most = 10_000_000;
        var cases = new Option<int>("--cases") { Description = $"Number of cases drawn from the stated tolerances, 100 to {Most}.", DefaultValueFactory = _ => SpreadOptions.UsualCases, HelpName = "count" };
        cases.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && (!int.TryParse(token.Value, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 100 or > Most))
            {
                result.AddError($"--cases {token.Value}: allowed is a whole number from 100 to {Most}.");
            }
        });
        var seed = new Option<ulong>("--seed") { Description = "Chooses the draws; the same seed gives the same figures.", DefaultValueFactory = _ => SpreadOptions.Usual.Seed, HelpName = "number" };
        command.Options.Add(cases);
        command.Options.Add(seed);
        return (cases, seed);
    }

    /// <summary>The option that names a file for the result, in place of standard output.</summary>
    public static Option<string?> OutputOption(string what) => new("--output", "-o") { Description = $"Write {what} to this file instead of standard output.", HelpName = "file" };

    /// <summary>Writes a result to the file named, or to standard output.</summary>
    /// <exception cref="UsageException">The file is the case itself, or cannot be written.</exception>
    public static void Deliver(Streams streams, string? path, string casePath, string text)
    {
        if (path is null or "-")
        {
            streams.Output.Write(text);
            return;
        }

        if (casePath != "-" && Path.GetFullPath(path) == Path.GetFullPath(casePath))
        {
            throw new UsageException($"{path} is the case file itself and was left as it is", "Name another file for the result.");
        }

        OutputFile.Write(path, text, overwrite: true);
    }
}
