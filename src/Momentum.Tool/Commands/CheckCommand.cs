using System.CommandLine;
using System.Text.Json.Nodes;
using Momentum.Cases;
using Momentum.Cases.Answers;
using Momentum.Cases.Keys;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum check</c>: reads and judges a case without sizing it.</summary>
internal static class CheckCommand
{
    public static Command Build(Streams streams)
    {
        Argument<string> file = CommandLine.CaseArgument();
        Option<bool> json = CommandLine.JsonOption();
        var command = new Command("check", """
            Reads a case and judges it: spelling, units, missing and contradicting keys, and whether the body is physical and
            goes with the hub. It computes no de-spin; for that see size.

            Example:
              momentum check case.toml
            """)
        {
            file, json,
        };
        command.SetAction(parsed => Check(streams, parsed.GetRequiredValue(file), parsed.GetValue(json)));
        return command;
    }

    private static int Check(Streams streams, string path, bool json)
    {
        CaseReading reading = CaseReader.Read(path, streams.Input);
        var findings = new Findings(reading.File);
        SpinningBody? body = reading.Case is null ? null : BodyJudge.Judge(reading.Case, findings);
        IReadOnlyList<Problem> problems = [.. reading.Problems, .. findings.Problems];
        if (body is null || findings.HasErrors)
        {
            Messages.Write(streams, problems, ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        Case given = reading.Case!;
        IReadOnlyList<AnswerFigure> figures = BodyFigures.Of(body, given.Despin.HubRadius.Value);
        string unknown = Solver.UnknownOf(given.Despin);
        if (json)
        {
            var result = new JsonObject { ["ok"] = true, ["title"] = given.Title, ["case_file"] = reading.File, ["to_solve_for"] = unknown };
            foreach (AnswerFigure figure in figures)
            {
                result[figure.Key] = figure.Value;
            }

            result["spin_axis"] = BodyJudge.Rank(body) switch
            {
                SpinAxisRank.Largest => "largest inertia",
                SpinAxisRank.Least => "least inertia",
                SpinAxisRank.Intermediate => "intermediate inertia",
                SpinAxisRank.NoDifference => "all moments alike",
                _ => null,
            };
            result["parts"] = new JsonArray([.. body.Parts.Select(p => new JsonObject
            {
                ["name"] = p.Name,
                ["shape"] = p.Shape,
                ["hole"] = p.IsSubtracted,
                ["mass_kg"] = p.BasicMass.Kilograms,
                ["growth"] = p.Growth.DecimalFractions,
                ["mass_with_growth_kg"] = p.PredictedMass.Kilograms,
                ["centre_x_m"] = p.CentreOfMass.X.Meters,
                ["centre_y_m"] = p.CentreOfMass.Y.Meters,
                ["centre_z_m"] = p.CentreOfMass.Z.Meters,
            })]);
            result["warnings"] = Messages.Json(problems);
            result["not_used_yet"] = AnswerText.Texts(reading.NotUsedYet);
            streams.Output.WriteLine(JsonText.Of(result));
        }
        else
        {
            streams.Output.Write(AnswerText.Heading(given));
            streams.Output.Write(AnswerText.Rows(figures));
            streams.Output.Write(AnswerText.Parts(body.Parts));
            streams.Output.Write($"\nThe case is in order ({(problems.Count == 0 ? "no warning" : $"{problems.Count} warning{(problems.Count == 1 ? "" : "s")}")}); to be solved for: {unknown}{(given.Despin.OnSprings ? " and despin.cord.stiffness" : "")}.\n");
            Messages.WriteRemarks(streams, problems, reading.NotUsedYet);
        }

        return (int)ExitCode.Done;
    }
}
