using System.Text.Json.Nodes;
using Momentum.Cases.Answers;
using Momentum.Cases.Keys;
using Momentum.Dispersion;

namespace Momentum.Cases.Report;

/// <summary>Writes an answer as JSON for machines: numbers in SI, with the unit in every key.</summary>
public static class JsonReport
{
    /// <summary>Writes the answer.</summary>
    public static void Write(Answer answer, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(utf8);
        Write(Of(answer), utf8);
    }

    /// <summary>Writes what judging a case found of its body.</summary>
    /// <exception cref="ArgumentException">The case has errors.</exception>
    public static void Write(Judgement judgement, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        ArgumentNullException.ThrowIfNull(utf8);
        Write(Of(judgement), utf8);
    }

    /// <summary>Writes what is wrong with a case: an object whose key <c>problems</c> holds them.</summary>
    public static void Write(IEnumerable<Problem> problems, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(problems);
        ArgumentNullException.ThrowIfNull(utf8);
        Write(new JsonObject { ["problems"] = Of(problems) }, utf8);
    }

    private static void Write(JsonObject json, Stream utf8)
    {
        JsonText.Write(json, utf8);
        utf8.WriteByte((byte)'\n');
    }

    internal static JsonObject Of(Answer answer)
    {
        var json = new JsonObject
        {
            ["title"] = answer.Reading.Case!.Title,
            ["case_file"] = answer.Reading.File,
            ["solved_for"] = answer.SolvedFor,
        };
        Add(json, answer.Figures);
        json["requirements"] = new JsonArray([.. answer.Requirements.Select(r => new JsonObject
        {
            ["name"] = r.Key,
            ["limit"] = r.Limit,
            ["limit_value"] = r.Bound,
            ["value"] = r.Value,
            ["unit"] = r.SiUnit,
            ["verdict"] = KeyDescription.Phrase(r.Verdict.ToString()),
            ["met"] = r.Verdict switch { Verdict.Met or Verdict.MetAtNominal => true, Verdict.NotMet => false, _ => null },
            ["share"] = r.Share is { } share ? Of(share) : null,
            ["note"] = r.Note,
        })]);
        json["all_requirements_met"] = answer.AllMet;
        json["assumptions"] = JsonText.Texts(answer.Assumptions);
        json["warnings"] = Of(answer.Warnings);
        json["not_used_yet"] = JsonText.Texts(answer.Reading.NotUsedYet);
        return json;
    }

    private static JsonObject Of(JudgedShare share) => new()
    {
        ["cases"] = share.Cases,
        ["passed"] = share.Passed,
        ["unknown"] = share.Unknown,
        ["share"] = share.Estimate,
        ["lower_bound"] = share.Lower,
        ["upper_bound"] = share.Upper,
        ["cases_that_would_show"] = share.CasesThatWouldShow,
    };

    internal static JsonObject Of(Judgement judgement)
    {
        if (judgement.HasErrors)
        {
            throw new ArgumentException("The case has errors: write its Problems.", nameof(judgement));
        }

        Case given = judgement.Reading.Case!;
        var json = new JsonObject
        {
            ["ok"] = true,
            ["title"] = given.Title,
            ["case_file"] = judgement.Reading.File,
            ["to_solve_for"] = Solver.UnknownOf(given.Despin),
        };
        Add(json, judgement.Figures);
        json["warnings"] = Of(judgement.Problems);
        json["not_used_yet"] = JsonText.Texts(judgement.Reading.NotUsedYet);
        return json;
    }

    /// <summary>A group's parts under their keys; a group without a key stands in the one around it.</summary>
    private static JsonObject Add(JsonObject to, AnswerGroup group)
    {
        foreach (AnswerNode node in group.Nodes)
        {
            switch (node)
            {
                case AnswerGroup { Key: "" } inner:
                    Add(to, inner);
                    break;
                case AnswerGroup inner:
                    to[inner.Key] = Add([], inner);
                    break;
                case AnswerTable table:
                    to[table.Key] = new JsonArray([.. table.Rows.Select(row => Add([], row))]);
                    break;
                case AnswerFigure figure:
                    to[figure.Key] = figure.Value;
                    break;
                case AnswerCount count:
                    to[count.Key] = count.Count;
                    break;
                case AnswerWord word:
                    to[word.Key] = word.Word;
                    break;
                default:
                    throw new NotSupportedException($"JSON has no form yet for {node.GetType().Name}.");
            }
        }

        return to;
    }

    internal static JsonArray Of(IEnumerable<Problem> problems) => new([.. problems.Select(p => new JsonObject
    {
        ["severity"] = p.Severity == Severity.Error ? "error" : "warning",
        ["file"] = p.File,
        ["line"] = p.Place?.Line,
        ["column"] = p.Place?.Column,
        ["key"] = p.Key,
        ["value"] = p.Value,
        ["message"] = p.Message,
        ["allowed"] = p.Allowed,
        ["remedy"] = p.Remedy,
    })]);
}
