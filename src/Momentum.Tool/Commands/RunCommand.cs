using System.CommandLine;
using System.Globalization;
using Momentum.Cases;
using Momentum.Cases.Answers;
using Momentum.Cases.Quantities;
using Momentum.Cases.Report;
using UnitsNet;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum run</c>: the motion against time.</summary>
internal static class RunCommand
{
    private const int MostSamples = 1_000_000;

    public static Command Build(Streams streams)
    {
        var samples = new Option<int>("--samples") { Description = $"Evenly spaced instants, 2 to {MostSamples}; those of events are added.", DefaultValueFactory = _ => 501, HelpName = "count" };
        var until = new Option<string?>("--until") { Description = "Time of the last instant after release of the weights, such as \"2 s\". Left out: a quarter past let-go.", HelpName = "duration" };
        var whole = new Option<bool>("--whole") { Description = "Write the whole motion, in three dimensions with wobble and stretch, in place of the planar one." };
        samples.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && (!int.TryParse(token.Value, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 2 or > MostSamples))
            {
                result.AddError($"--samples {token.Value}: allowed is a whole number from 2 to {MostSamples}.");
            }
        });
        var command = new Command("run", """
            Computes the motion against time and writes it as CSV (or JSON): spin, unwound length, cord angle, tension, speed of
            the weights, energy, angular momentum and where the weights are; of cords sized as springs the stretch too. SI,
            with the unit in each column's name. With --whole it is the motion in three dimensions: rates, attitude
            (quaternion, body to space, w its scalar part), nutation, and each cord and weight for itself.

            Example:
              momentum run case.toml --output history.csv
            """)
        {
            samples, until, whole,
        };
        var run = new CaseRun(command, "the history");
        command.SetAction(parsed =>
        {
            Duration? end = Until(parsed.GetValue(until));
            return run.Of(streams, parsed, (answer, cancellation) =>
            {
                History history = parsed.GetValue(whole)
                    ? WholeHistory.Of(answer.Whole ?? throw new UsageException($"--whole: {answer.WhyNotWhole}", "Leave --whole out for the planar motion."), parsed.GetValue(samples), end, cancellation)
                    : PlanarHistory.Of(answer.Motion, parsed.GetValue(samples), end);
                return run.IsJson(parsed) ? writer => HistoryReport.WriteJson(answer, history, writer) : writer => HistoryReport.WriteCsv(history, writer);
            });
        });
        return command;
    }

    private static Duration? Until(string? text)
    {
        if (text is null)
        {
            return null;
        }

        if (QuantityText.Parse(text, QuantityKinds.ByType[typeof(Duration)], out Trouble? trouble) is not { } parsed)
        {
            throw new UsageException($"--until \"{Printable.Line(text)}\": {trouble!.Message}", trouble.Remedy);
        }

        return parsed.Si > 0 ? Duration.FromSeconds(parsed.Si) : throw new UsageException($"--until \"{Printable.Line(text)}\": it is not more than 0 s", "Write for example --until \"2 s\".");
    }
}
