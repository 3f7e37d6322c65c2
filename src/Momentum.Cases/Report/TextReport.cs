using System.Globalization;
using System.Text;
using Momentum.Cases.Answers;

namespace Momentum.Cases.Report;

/// <summary>Writes an answer as plain text: a table for people.</summary>
public static class TextReport
{
    /// <summary>Writes the answer.</summary>
    public static void Write(Answer answer, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(utf8);
        utf8.Write(Encoding.UTF8.GetBytes(Of(answer)));
    }

    /// <summary>Writes what judging a case found of its body.</summary>
    /// <exception cref="ArgumentException">The case has errors.</exception>
    public static void Write(Judgement judgement, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        ArgumentNullException.ThrowIfNull(utf8);
        utf8.Write(Encoding.UTF8.GetBytes(Of(judgement)));
    }

    internal static string Of(Judgement judgement)
    {
        if (judgement.HasErrors)
        {
            throw new ArgumentException("The case has errors: write its Problems.", nameof(judgement));
        }

        Case given = judgement.Reading.Case!;
        int warnings = judgement.Problems.Count;
        string found = warnings == 0 ? "no warning" : string.Create(CultureInfo.InvariantCulture, $"{warnings} warning{(warnings == 1 ? "" : "s")}");
        var text = new StringBuilder(Heading(given));
        Group(text, judgement.Figures);
        string springs = given.Despin.OnSprings ? " and despin.cord.stiffness" : "";
        return text.Append(CultureInfo.InvariantCulture, $"The case is in order ({found}); to be solved for: {Solver.UnknownOf(given.Despin)}{springs}.\n").ToString();
    }

    /// <summary>The answer's text: what is required, then every group of the tree, then what was taken for granted.</summary>
    private static string Of(Answer answer)
    {
        var text = new StringBuilder(Heading(answer.Reading.Case!));
        Requirements(text, answer.Requirements);
        foreach (AnswerGroup group in answer.Figures.Nodes.OfType<AnswerGroup>())
        {
            Group(text, group);
        }

        text.Append("Assumed\n");
        foreach (string assumption in answer.Assumptions)
        {
            text.Append("  ").Append(assumption).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The title and an empty line.</summary>
    private static string Heading(Case given) => Printable.Line(given.Title) + "\n\n";

    private static void Requirements(StringBuilder text, IReadOnlyList<JudgedRequirement> requirements)
    {
        if (requirements.Count == 0)
        {
            return;
        }

        text.Append("Required\n");
        int width = requirements.Max(r => r.Name.Length) + 2;
        foreach (JudgedRequirement requirement in requirements)
        {
            string value = requirement.Shown is { } shown ? $"{Number(shown)} {requirement.Unit}".TrimEnd() : "-";
            string verdict = requirement.Verdict switch { Verdict.Met => "met", Verdict.MetAtNominal => "met at nominal", Verdict.NotMet => "NOT MET", _ => "NOT SHOWN" };
            text.Append("  ").Append(requirement.Name.PadRight(width)).Append(requirement.Limit.Trim().PadRight(12)).Append(value.PadRight(18)).Append(verdict.PadRight(16)).Append(requirement.Note);
            TrimEnd(text).Append('\n');
        }

        text.Append('\n');
    }

    /// <summary>Its heading and note, its own parts, its tables, then the groups in it.</summary>
    private static void Group(StringBuilder text, AnswerGroup group)
    {
        text.Append(group.Name).Append('\n');
        text.Append(Rows([.. group.Nodes.Where(node => node is not AnswerGroup and not AnswerTable)]));
        if (group.Note.Length > 0)
        {
            text.Append("  ").Append(group.Note).Append('\n');
        }

        text.Append('\n');
        foreach (AnswerTable table in group.Nodes.OfType<AnswerTable>().Where(t => t.Rows.Count > 0))
        {
            Table(text, table);
        }

        foreach (AnswerGroup inner in group.Nodes.OfType<AnswerGroup>())
        {
            Group(text, inner);
        }
    }

    /// <summary>A row for each part: name, number, unit, note.</summary>
    private static string Rows(IReadOnlyList<AnswerNode> nodes)
    {
        if (nodes.Count == 0)
        {
            return "";
        }

        var text = new StringBuilder();
        int width = nodes.Max(n => n.Name.Length) + 2;
        int valueWidth = nodes.Max(n => n is AnswerWord ? 0 : Value(n).Length);
        foreach (AnswerNode node in nodes)
        {
            string unit = node is AnswerFigure { Unit: var u, Spread: var spread } ? u + (spread is null ? "" : $" ± {spread.Shown.ToString("G2", CultureInfo.InvariantCulture)}") : "";
            string note = (node is AnswerFigure { Solved: true }, node.Note) switch
            {
                (true, "") => "solved for",
                (true, _) => $"solved for; {node.Note}",
                _ => node.Note,
            };
            text.Append("  ").Append(node.Name.PadRight(width)).Append(Value(node).PadLeft(valueWidth)).Append(' ').Append(unit.PadRight(9)).Append(' ').Append(note);
            TrimEnd(text).Append('\n');
        }

        return text.ToString();
    }

    private static void Table(StringBuilder text, AnswerTable table)
    {
        string[][] cells = [
            [.. table.Columns.Select(c => c is AnswerFigure { Unit.Length: > 0 } figure ? $"{c.Name}, {figure.Unit}" : c.Name)],
            .. table.Rows.Select(row => table.Columns.Select(c => row.Nodes.FirstOrDefault(n => n.Key == c.Key) is { } node ? Value(node) : "").ToArray())];
        int[] widths = [.. table.Columns.Select((_, i) => cells.Max(row => row[i].Length))];
        text.Append(table.Name).Append(table.Note.Length > 0 ? $" ({table.Note})" : "").Append('\n');
        foreach (string[] row in cells)
        {
            text.Append("  ").AppendJoin("  ", row.Select((cell, i) => table.Columns[i] is AnswerWord ? cell.PadRight(widths[i]) : cell.PadLeft(widths[i])));
            TrimEnd(text).Append('\n');
        }

        text.Append('\n');
    }

    private static string Value(AnswerNode node) => node switch
    {
        AnswerFigure { Spread: { } spread } figure => Number(figure.Shown, spread),
        AnswerFigure figure => Number(figure.Shown),
        AnswerCount count => count.Count.ToString(CultureInfo.InvariantCulture),
        AnswerWord word => Printable.Line(word.Shown),
        _ => "",
    };

    /// <summary>No digit beyond the second of the standard deviation, where nothing is known.</summary>
    private static string Number(double shown, FigureSpread spread)
    {
        int decimals = spread.Shown > 0 ? 1 - (int)Math.Floor(Math.Log10(spread.Shown)) : -1;
        return decimals is >= 0 and <= 9 ? shown.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : Number(shown);
    }

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
