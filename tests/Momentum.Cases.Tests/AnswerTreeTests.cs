using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;

namespace Momentum.Cases.Tests;

/// <summary>One tree of figures, and writers over it that leave nothing out.</summary>
public sealed class AnswerTreeTests
{
    private static readonly Lazy<Answer> _answer = new(() => Solver.Solve(Judgement.Of(CaseReader.Read(Repository.Example("tern-stage.toml"))), new SpreadOptions(400, 1)));

    private static Answer Tern => _answer.Value;

    [Fact]
    public void Every_key_is_unique_where_it_stands_and_every_part_has_a_name()
    {
        Check(Tern.Figures);

        static void Check(AnswerGroup group)
        {
            Assert.Equal(Keys(group).Order(), Keys(group).Distinct().Order());
            Assert.All(group.Nodes, node => Assert.False(string.IsNullOrWhiteSpace(node.Name)));
            Assert.All(group.Nodes.OfType<AnswerGroup>(), Check);
        }

        static IEnumerable<string> Keys(AnswerGroup group) => group.Nodes.SelectMany(node => node is AnswerGroup { Key: "" } inner ? Keys(inner) : [node.Key]);
    }

    [Fact]
    public void JSON_and_CSV_hold_every_part_of_the_tree_in_full_precision()
    {
        JsonNode json = JsonNode.Parse(Written(JsonReport.Write))!;
        string[][] csv = [.. Written(CsvReport.Write).TrimEnd('\n').Split('\n').Select(line => line.Split(','))];
        (string Path, double Value)[] figures = [.. Paths(Tern.Figures, "")];

        Assert.Equal("path,name,value_si,value,unit,standard_deviation,note", string.Join(',', csv[0]));
        Assert.True(figures.Length > 60, $"{figures.Length} figures");
        foreach ((string path, double value) in figures)
        {
            Assert.Equal(value, (double)path.Split('.').Aggregate(json, (node, key) => node[key]!)!);
            Assert.Contains(csv, fields => fields[0] == path && fields.Contains(value.ToString("R", CultureInfo.InvariantCulture)));
        }

        static IEnumerable<(string, double)> Paths(AnswerGroup group, string path) => group.Nodes.SelectMany(node => node switch
        {
            AnswerFigure figure => [(path + figure.Key, figure.Value)],
            AnswerGroup { Key: "" } inner => Paths(inner, path),
            AnswerGroup inner => Paths(inner, $"{path}{inner.Key}."),
            _ => Enumerable.Empty<(string, double)>(),
        });
    }

    [Fact]
    public void Text_has_every_group_and_every_name()
    {
        string text = Written(TextReport.Write);
        Check(Tern.Figures);

        void Check(AnswerGroup group)
        {
            Assert.All(group.Nodes, node => Assert.Contains(node.Name, text, StringComparison.Ordinal));
            Assert.All(group.Nodes.OfType<AnswerGroup>(), Check);
        }
    }

    [Fact]
    public void The_page_has_the_short_answer()
    {
        string page = Written(HtmlReport.Write);
        AnswerFigure[] headlines = [.. Tern.Figures.Figures.Where(f => f.IsHeadline)];

        Assert.InRange(headlines.Length, 8, 16);
        Assert.Equal(Tern.SolvedFor + "_m", headlines.Single(f => f.Solved).Key);
        Assert.All(headlines, f => Assert.Contains($"<th scope=\"row\">{f.Name.Replace("'", "&apos;", StringComparison.Ordinal)}", page, StringComparison.Ordinal));
    }

    [Fact]
    public void A_figure_is_shown_with_the_digits_that_its_spread_leaves()
    {
        // Of the peak tension some hundredths scatter: its third digit is the last that says anything.
        AnswerFigure tension = Tern.Figures.Figures.First(f => f.Key == "peak_cord_tension_n");
        string line = Written(TextReport.Write).Split('\n').First(l => l.Contains(tension.Name, StringComparison.Ordinal));
        string number = line[line.IndexOf(tension.Name, StringComparison.Ordinal)..].Replace(tension.Name, "", StringComparison.Ordinal).TrimStart().Split(' ')[0];

        Assert.NotNull(tension.Spread);
        int decimals = number.Contains('.', StringComparison.Ordinal) ? number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        Assert.Equal(1 - (int)Math.Floor(Math.Log10(tension.Spread.Shown)), decimals);
        Assert.Equal(tension.Shown, double.Parse(number, CultureInfo.InvariantCulture), tension.Spread.Shown / 10);
    }

    [Fact]
    public void A_format_is_found_by_its_name() =>
        Assert.All(ReportFormat.All, format =>
        {
            using var result = new MemoryStream();
            format.Write(Tern, result);
            Assert.True(result.Length > 1000, format.Name);
        });

    private static string Written(Action<Answer, Stream> write)
    {
        using var result = new MemoryStream();
        write(Tern, result);
        return Encoding.UTF8.GetString(result.ToArray());
    }
}
