using System.Globalization;
using Momentum.Cases.Report.Model;
using OxyPlot;
using OxyPlot.Series;

namespace Momentum.Cases.Report.Pictures;

/// <summary>Draws a <see cref="Histogram"/>.</summary>
internal static class HistogramPicture
{
    private const double Height = 250;

    /// <summary>The whole figure: heading, plot, caption.</summary>
    /// <exception cref="ArgumentException">There is no bin, or not one edge more than bins.</exception>
    public static Markup Draw(Histogram histogram, string id)
    {
        if (histogram.Counts.Count == 0 || histogram.Edges.Count != histogram.Counts.Count + 1)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"The histogram '{histogram.Title}' has {histogram.Counts.Count} bins and {histogram.Edges.Count} edges; give one bin or more, and one edge more than bins."), nameof(histogram));
        }

        PlotModel plot = PlotSvg.Empty(histogram.X, xPadding: 0.02);
        EventLines.Add(plot, histogram.Events, histogram.Edges[0], histogram.Edges[^1]);
        PlotSvg.Upright(plot).MinimumPadding = 0;
        var bars = new RectangleBarSeries { FillColor = Ink.Bar, StrokeThickness = 0 };
        for (int i = 0; i < histogram.Counts.Count; i++)
        {
            bars.Items.Add(new RectangleBarItem(histogram.Edges[i], 0, histogram.Edges[i + 1], histogram.Counts[i]));
        }

        plot.Series.Add(bars);
        return Markup.Of($"""
            <figure>
            <figcaption><h3>{histogram.Title}</h3><p class="axis-name">Cases</p></figcaption>
            {PlotSvg.Draw(plot, id, Height, Describe(histogram), cursor: false)}
            {(histogram.Caption.Length == 0 ? Markup.None : Markup.Of($"<p class=\"caption\">{histogram.Caption}</p>"))}
            </figure>
            """);
    }

    /// <summary>The histogram in words.</summary>
    public static string Describe(Histogram histogram)
    {
        long total = histogram.Counts.Sum();
        int tallest = Enumerable.Range(0, histogram.Counts.Count).MaxBy(i => histogram.Counts[i]);
        string events = string.Concat(histogram.Events.Select(e => $" {e.Label} at {X(e.X)}."));
        return string.Create(CultureInfo.InvariantCulture,
            $"{histogram.Title}: {total} cases of {histogram.X.Name} between {X(histogram.Edges[0])} and {X(histogram.Edges[^1])}; ")
            + $"most fall between {X(histogram.Edges[tallest])} and {X(histogram.Edges[tallest + 1])}.{events}";

        Figure X(double value) => new(value, histogram.X.Unit, 3);
    }
}
