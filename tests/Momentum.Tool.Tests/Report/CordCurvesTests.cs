using Momentum.Cases.Report;
using Momentum.Cases.Report.Composing;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Report.Pictures;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tool.Tests.Report;

/// <summary>No cord is left out of a chart, however many there are.</summary>
[Collection(BrowserTests.Name)]
public sealed class CordCurvesTests(Chromium chromium)
{
    private static readonly double[] _times = [0, 1, 2, 3];

    private static readonly DespinMotion _planar = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRevolutionsPerMinute(72))
        .SizeCordLength(Mass.FromKilograms(0.62), RotationalSpeed.Zero, LetGo.Radial).Deploy();

    [Fact]
    public void Cords_that_are_alike_are_one_curve()
    {
        CordCurves curves = CordCurves.Of("cord", _times, [.. Enumerable.Range(0, 9).Select(i => new double[] { 0, 1, 2 + (1e-9 * i), 3 })]);

        Assert.Equal("Each cord", Assert.Single(curves.Series).Name);
        Assert.Null(curves.Band);
    }

    [Fact]
    public void Six_cords_have_a_curve_each_in_the_colour_of_the_cord()
    {
        CordCurves curves = CordCurves.Of("cord", _times, [.. Enumerable.Range(0, 6).Select(i => new double[] { 0, i, 2, 3 })]);

        Assert.Equal(Enumerable.Range(1, 6).Select(i => $"Cord {i}"), curves.Series.Select(s => s.Name));
        Assert.Equal(Enumerable.Range(0, 6), curves.Series.Select(s => s.Colour!.Value));
        Assert.Null(curves.Band);
    }

    [Fact]
    public void More_lie_in_a_band_from_least_to_greatest_and_the_highest_are_named_in_their_order()
    {
        // The eighth is the highest and ends first; the third is the lowest.
        double[][] values = [.. Enumerable.Range(1, 8).Select(i => new double[] { 0, i == 3 ? -1 : i, i, i }), [0, 20]];
        CordCurves curves = CordCurves.Of("weight", _times, values);

        Assert.Equal(["Weight 9", "Weight 8", "Weight 7"], curves.Series.Select(s => s.Name));
        Assert.Equal([0, -1, 1, 1], curves.Band!.Low);
        Assert.Equal([0, 20, 8, 8], curves.Band.High);
        Assert.Equal("All 9 weights", curves.Band.Name);
        Assert.Contains("all 9 weights", curves.Caption, StringComparison.Ordinal);
        Assert.Equal([0, 1], curves.Series[0].X);
    }

    [Fact]
    public void Cord_that_is_gone_at_once_has_no_curve_and_takes_none_from_the_others()
    {
        CordCurves curves = CordCurves.Of("cord", _times, [[0], [0, 1, 2]]);

        Assert.Equal("Cord 2", Assert.Single(curves.Series).Name);
        Assert.Empty(CordCurves.Of("cord", _times, [[], []]).Series);
    }

    [Theory]
    [InlineData("Cord tension")]
    [InlineData("Speed of the weights")]
    public void Band_of_eight_cords_holds_what_the_library_has_of_each(string title)
    {
        DeploymentResult result = SampleDeployment.Eight.Deploy();
        ChartBand band = WholePictures.Of(result).Charts(_planar).Single(c => c.Title == title).Band!;
        foreach ((int i, double time) in band.X.Index().Where(x => x.Index % 50 == 0))
        {
            double[] all = [.. result.At(Duration.FromSeconds(time)).Cords
                .Where(c => title != "Cord tension" || c.Phase != CordPhase.LetGo)
                .Select(c => title == "Cord tension" ? c.Tension.Newtons : c.WeightVelocity.Magnitude.MetersPerSecond)];
            Assert.Equal(all.Min(), band.Low[i], 1e-9 * all.Max());
            Assert.Equal(all.Max(), band.High[i], 1e-9 * all.Max());
        }
    }

    [Theory]
    [InlineData(390, "dark")]
    [InlineData(1400, "light")]
    public async Task Page_of_eight_unlike_cords_shows_the_bands_and_fits(int width, string scheme)
    {
        WholePictures pictures = WholePictures.Of(SampleDeployment.Eight.Deploy());
        string html = HtmlReport.Render(SampleReport.Full with { Unwinding = pictures.Unwinding, Charts = pictures.Charts(_planar) });
        await using OpenPage page = await chromium.OpenAsync(html, width, scheme);

        Assert.Equal(2, await page.Ask<int>("document.querySelectorAll('.legend .fill-band').length"));
        Assert.Equal(2, await page.Ask<int>("[...document.querySelectorAll('.plot .fill-band')].filter(e => e.getBoundingClientRect().height > 1).length"));
        Assert.Empty(await page.Page.EvaluateFunctionAsync<string[]>(PageTests.Contrast, "curve", 3));
        Assert.True(await page.Ask<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
        Assert.Empty(page.Complaints);
        Assert.InRange(html.Length, 50_000, 400_000);
    }

    [Fact]
    public void Band_is_told_in_words_too()
    {
        var chart = new LineChart
        {
            Title = "Tension",
            X = new("Time", "s"),
            Y = new("Tension", "N"),
            Series = [new("Cord 9", [0, 1], [0, 454.754])],
            Band = new("All 9 cords", [0, 1], [0, 300], [0, 454.754]),
        };

        Assert.Contains(" All 9 cords: between 0 N and 455 N.", LineChartPicture.Describe(chart).Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Band_with_a_missing_edge_is_refused()
    {
        LineChart chart = SampleReport.Full.Charts[0] with { Band = new("short", [0, 1], [0], [1, 1]) };

        Assert.Throws<ArgumentException>(() => LineChartPicture.Draw(chart, "x"));
    }
}
