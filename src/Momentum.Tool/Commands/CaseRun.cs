using System.CommandLine;
using System.Globalization;
using Momentum.Cases.Answers;
using Momentum.Tool.Files;

namespace Momentum.Tool.Commands;

/// <summary>What the verbs that compute have in common: read the case, solve it, write the answer, say how it came out.</summary>
internal sealed class CaseRun
{
    private const int MostCases = 10_000_000;

    private readonly Argument<string> _file = CommandLine.CaseArgument();
    private readonly Option<bool> _json = CommandLine.JsonOption();
    private readonly Option<string?> _output;
    private readonly Option<int?> _cases = new("--cases")
    {
        Description = $"Number of cases drawn from the stated tolerances, at most: 100 to {MostCases}. The run ends at the first of its looks, at fixed numbers of cases, that tells of every requirement. " +
            $"Left out: what the case says, or {SpreadOptions.UsualCases}, or {SpreadOptions.UsualCasesInPieces} where heavy cords are computed in pieces.",
        HelpName = "count",
    };

    private readonly Option<ulong?> _seed = new("--seed") { Description = $"Chooses the draws; the same seed gives the same figures. Left out: what the case says, or {SpreadOptions.UsualSeed}.", HelpName = "number" };
    private readonly Option<string?> _limit = TimeLimit.Option();
    private readonly Option<string?> _meshes = CommandLine.MeshesOption();

    /// <summary>Gives a command the arguments that all of them take.</summary>
    /// <param name="command">The command.</param>
    /// <param name="what">What it writes: "the answer".</param>
    public CaseRun(Command command, string what)
    {
        _output = new("--output", "-o") { Description = $"Write {what} to this file instead of standard output.", HelpName = "file" };
        _cases.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && (!int.TryParse(token.Value, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 100 or > MostCases))
            {
                result.AddError($"--cases {token.Value}: allowed is a whole number from 100 to {MostCases}.");
            }
        });
        command.Arguments.Add(_file);
        foreach (Option option in new Option[] { _output, _json, _cases, _seed, _limit, _meshes })
        {
            command.Options.Add(option);
        }
    }

    /// <summary>Whether the answer is wanted as JSON.</summary>
    public bool IsJson(ParseResult parsed) => parsed.GetValue(_json);

    /// <summary>Where the answer goes, as the user named it.</summary>
    public string? Output(ParseResult parsed) => parsed.GetValue(_output);

    /// <summary>Runs the command.</summary>
    /// <param name="streams">Where to read and write.</param>
    /// <param name="parsed">The command line.</param>
    /// <param name="present">Makes what writes the answer. The making counts as computing, with the token that ends it; the writing does not.</param>
    /// <param name="afterwards">What is done when it is written; may be null.</param>
    /// <returns>The exit code.</returns>
    public int Of(Streams streams, ParseResult parsed, Func<Answer, CancellationToken, Action<TextWriter>> present, Action<Answer>? afterwards = null)
    {
        bool json = IsJson(parsed);
        var limit = TimeLimit.Of(parsed.GetValue(_limit));
        var destination = Destination.Of(Output(parsed), streams);
        var spread = new SpreadOptions(parsed.GetValue(_cases), parsed.GetValue(_seed));
        var file = CaseFile.Read(parsed.GetRequiredValue(_file), streams.Input, CommandLine.MeshFolder(parsed.GetValue(_meshes)));
        destination.KeepOff(file.Inputs);

        Judgement judgement;
        Answer? answer;
        Action<TextWriter> write;
        try
        {
            (judgement, answer, write) = LongWork.Of(streams, "cases", limit, (progress, token) =>
            {
                var judged = Judgement.Of(file.Reading);
                if (judged.HasErrors)
                {
                    return (judged, null, _ => { });
                }

                destination.KeepOff(file.Inputs);
                Answer solved = Solver.Solve(judged, spread, progress, token);
                return (judged, (Answer?)solved, present(solved, token));
            });
        }
        catch (ArgumentException refusal)
        {
            Messages.Write(streams, $"{file.Reading.File}: {refusal.Message}", "Check the values and their units.", ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        if (answer is null)
        {
            Messages.Write(streams, judgement.Problems, ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        destination.Write(write);
        afterwards?.Invoke(answer);
        if (!json)
        {
            Messages.WriteRemarks(streams, answer.Warnings, judgement.Reading.NotUsedYet);
        }

        if (answer.FailedChecks is [var failed, ..])
        {
            Messages.Write(streams, $"a check of the computation on itself failed: {failed}", "Do not use these figures, and please report the case: it may be beyond what the computation is meant for, or show a defect.", ExitCode.Refused, json);
            return (int)ExitCode.Refused;
        }

        return (int)(answer.AllMet ? ExitCode.Done : ExitCode.RequirementNotMet);
    }
}
