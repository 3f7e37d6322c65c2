using System.Globalization;
using System.Text.RegularExpressions;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Report.Pictures;

namespace Momentum.Tool.Tests.Report;

/// <summary>What needs no browser to be seen.</summary>
public sealed partial class RenderingTests
{
    [Fact]
    public void Same_report_gives_the_same_bytes()
    {
        Assert.Equal(HtmlReport.Render(SampleReport.Full), HtmlReport.Render(SampleReport.Full));
    }

    [Fact]
    public void Page_carries_no_date_and_no_address_outside_itself()
    {
        string html = HtmlReport.Render(SampleReport.Full);

        Assert.DoesNotContain(DateTime.UtcNow.Year.ToString(CultureInfo.InvariantCulture) + "-", html, StringComparison.Ordinal);
        Assert.DoesNotMatch(Address(), html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal).Replace("http://www.w3.org/1999/xlink", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Policy_names_no_source_but_the_hashes_of_what_the_page_carries()
    {
        string policy = Policy().Match(HtmlReport.Render(SampleReport.Full)).Groups[1].Value;

        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_curve_has_a_dash_pattern_of_its_own()
    {
        Assert.Equal(Ink.CurveCount, Enumerable.Range(0, Ink.CurveCount).Select(Ink.Dash).Distinct().Count());
    }

    [Theory]
    [InlineData(0.7, 0.2)]
    [InlineData(1, 0.5)]
    [InlineData(3.9, 1)]
    [InlineData(4, 2)]
    [InlineData(250, 100)]
    public void Scale_bar_has_a_round_length_of_up_to_a_quarter_of_the_width(double half, double length)
    {
        Assert.Equal(length, new Drawing(190, 190 / half).ScaleBarLength, 1e-12 * length);
    }

    [Fact]
    public void Reviewer_can_match_the_case_file_by_its_hash()
    {
        string html = HtmlReport.Render(SampleReport.Full);

        Assert.Contains(SampleReport.Full.Case.Sha256, html, StringComparison.Ordinal);
        Assert.Contains($"Case file SHA-256 {SampleReport.Full.Case.Sha256[..16]}", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Chart_in_words_tells_ends_extremes_and_marks()
    {
        var chart = new LineChart
        {
            Title = "Tension",
            X = new("Time", "s"),
            Y = new("Tension", "N"),
            Series = [new("Each cord", [0, 1, 2], [0, 454.754, 100])],
            Marks = [new(1, 454.754, "peak 454.8 N")],
            Events = [new(2, "let-go")],
        };

        Assert.Equal(
            "Tension: Tension against Time. From 0 N at 0 s to 100 N at 2.00 s; lowest 0 N at 0 s, highest 455 N at 1.00 s. Marked: peak 454.8 N. let-go at 2.00 s.",
            LineChartPicture.Describe(chart).Replace('\u00A0', ' '));
    }

    [Fact]
    public void Chart_of_more_curves_than_can_be_told_apart_is_refused()
    {
        LineChart chart = SampleReport.Full.Charts[0] with
        {
            Series = [.. Enumerable.Range(0, Ink.CurveCount + 1).Select(i => new ChartSeries($"{i}", [0, 1], [0, 1]))],
        };

        ArgumentException error = Assert.Throws<ArgumentException>(() => LineChartPicture.Draw(chart, "x"));
        Assert.Contains("7 curves", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Curve_with_a_missing_ordinate_is_refused()
    {
        LineChart chart = SampleReport.Full.Charts[0] with { Series = [new("short", [0, 1], [0])] };

        Assert.Throws<ArgumentException>(() => LineChartPicture.Draw(chart, "x"));
    }

    [Fact]
    public void Histogram_with_an_edge_missing_is_refused()
    {
        Histogram histogram = SampleReport.Full.ResidualSpin! with { Edges = [0, 1] };

        Assert.Throws<ArgumentException>(() => HistogramPicture.Draw(histogram, "x"));
    }

    [Theory]
    [InlineData(0, "0.43", 1)]
    [InlineData(1, "12 345", 1)]
    public void Text_is_escaped_in_markup_and_markup_is_not_escaped_again(int kind, string text, int count)
    {
        Markup inner = Markup.Of($"<b>{"<" + text + ">"}</b>");
        Markup outer = Markup.Of($"<p>{inner} {count + kind}</p>");

        Assert.Equal($"<p><b>&lt;{text}&gt;</b> {count + kind}</p>", outer.ToString());
    }

    [GeneratedRegex(@"https?://|url\((?!#)|@import|src=")]
    private static partial Regex Address();

    [GeneratedRegex("http-equiv=\"Content-Security-Policy\" content=\"([^\"]*)\"")]
    private static partial Regex Policy();
}
