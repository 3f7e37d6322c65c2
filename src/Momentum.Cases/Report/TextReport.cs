using System.Globalization;
using System.Text;
using Momentum.Cases.Answers;
using Momentum.Cases.Syntax;
using Momentum.Frames;
using Momentum.Inertia;

namespace Momentum.Cases.Report;

/// <summary>Writes an answer as plain text: a table for people.</summary>
public static class TextReport
{
    /// <summary>Writes the answer.</summary>
    public static void Write(Answer answer, TextWriter text)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(text);
        text.Write(Of(answer));
    }

    /// <summary>Writes what judging a case found of its body.</summary>
    /// <exception cref="ArgumentException">The case has errors.</exception>
    public static void Write(Judgement judgement, TextWriter text)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        ArgumentNullException.ThrowIfNull(text);
        SpinningBody body = judgement.Body ?? throw new ArgumentException("The case has errors: write its Problems.", nameof(judgement));
        Case given = judgement.Reading.Case!;
        int warnings = judgement.Problems.Count;
        text.Write(Heading(given));
        text.Write(Rows(BodyFigures.Of(body, given.Despin.HubRadius.Value)));
        text.Write(Parts(body.Parts));
        string found = warnings == 0 ? "no warning" : string.Create(CultureInfo.InvariantCulture, $"{warnings} warning{(warnings == 1 ? "" : "s")}");
        text.Write($"\nThe case is in order ({found}); to be solved for: {Solver.UnknownOf(given.Despin)}{(given.Despin.OnSprings ? " and despin.cord.stiffness" : "")}.\n");
    }

    /// <summary>The answer's text.</summary>
    internal static string Of(Answer answer)
    {
        var text = new StringBuilder(Heading(answer.Reading.Case!) + Rows(answer.Figures));
        int width = NameWidth(answer.Figures);
        if (answer.Requirements.Count > 0)
        {
            text.Append("\nRequired\n");
            foreach (JudgedRequirement requirement in answer.Requirements)
            {
                string value = requirement.Shown is { } shown ? $"{Number(shown)} {requirement.Unit}".TrimEnd() : "-";
                string verdict = requirement.Verdict switch { Verdict.Met => "met", Verdict.NotMet => "NOT MET", _ => "NOT JUDGED" };
                text.Append("  ").Append(requirement.Name.PadRight(width)).Append(requirement.Limit.Trim().PadRight(12)).Append(value.PadRight(18)).Append(verdict.PadRight(11)).Append(requirement.Note);
                TrimEnd(text).Append('\n');
            }
        }

        if (answer.Springs is { } springs)
        {
            text.Append("\nWhat the spring cords forgive\n").Append(Rows([.. springs.Forgiveness.SelectMany(f => f.Figures)])).Append("  ").Append(springs.Words).Append('\n');
        }

        if (answer.Spread is { } spread)
        {
            text.Append(CultureInfo.InvariantCulture, $"\nSpread over {spread.Ensemble.Cases} cases drawn from the stated tolerances (seed {spread.Seed}{(spread.Ensemble.Failed > 0 ? $"; {spread.Ensemble.Failed} without a final spin" : "")})\n");
            text.Append(Rows(SpreadFigures.Of(spread)));
        }

        if (answer.Whole is { } whole)
        {
            text.Append("\nWhole motion, in three dimensions\n").Append(Rows(WholeMotionFigures.Of(whole)));
            if (answer.WholeSpread is { } wholeSpread)
            {
                text.Append(CultureInfo.InvariantCulture, $"\nWhole motion over {wholeSpread.Ensemble.Cases} cases (seed {wholeSpread.Seed}{(wholeSpread.Ensemble.Failed > 0 ? $"; {wholeSpread.Ensemble.Failed} without a result: not all weights let go, or refused" : "")})\n");
                text.Append(Rows(WholeMotionFigures.Of(wholeSpread)));
            }
        }

        text.Append("\nAssumed\n");
        foreach (string assumption in answer.Assumptions)
        {
            text.Append("  ").Append(assumption).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The title and an empty line.</summary>
    private static string Heading(Case given) => TomlText.Printable(given.Title) + "\n\n";

    /// <summary>A row for each figure: name, number, unit, note.</summary>
    private static string Rows(IReadOnlyList<AnswerFigure> figures)
    {
        var text = new StringBuilder();
        int width = NameWidth(figures);
        int numberWidth = figures.Max(f => Number(f.Shown).Length);
        foreach (AnswerFigure figure in figures)
        {
            string note = (figure.Solved, figure.Note) switch
            {
                (true, "") => "solved for",
                (true, _) => $"solved for; {figure.Note}",
                _ => figure.Note,
            };
            text.Append("  ").Append(figure.Name.PadRight(width)).Append(Number(figure.Shown).PadLeft(numberWidth)).Append(' ').Append(figure.Unit.PadRight(9)).Append(note);
            TrimEnd(text).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The mass table of a body made of parts; nothing for a stated tensor.</summary>
    private static string Parts(IReadOnlyList<PartContribution<Body>> parts)
    {
        if (parts.Count == 0)
        {
            return "";
        }

        int width = Math.Max(4, parts.Max(p => p.Name.Length)) + 2;
        var text = new StringBuilder("\n  " + "Part".PadRight(width) + "Mass / kg   Growth   Counted / kg   Centre x, y, z / mm\n");
        foreach (PartContribution<Body> part in parts)
        {
            string sign = part.IsSubtracted ? "-" : "";
            string centre = $"{Number(part.CentreOfMass.X.Millimeters)}, {Number(part.CentreOfMass.Y.Millimeters)}, {Number(part.CentreOfMass.Z.Millimeters)}";
            text.Append("  ").Append(TomlText.Printable(part.Name).PadRight(width))
                .Append((sign + Number(part.BasicMass.Kilograms)).PadLeft(9)).Append((Number(part.Growth.Percent) + " %").PadLeft(9))
                .Append((sign + Number(part.PredictedMass.Kilograms)).PadLeft(15)).Append("   ").Append(centre).Append('\n');
        }

        return text.ToString();
    }

    private static int NameWidth(IReadOnlyList<AnswerFigure> figures) => figures.Max(f => f.Name.Length) + 2;

    private static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static StringBuilder TrimEnd(StringBuilder text)
    {
        while (text.Length > 0 && text[^1] == ' ')
        {
            text.Length--;
        }

        return text;
    }
}
