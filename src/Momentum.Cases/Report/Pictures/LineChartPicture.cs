using System.Globalization;
using Momentum.Cases.Report.Model;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;

namespace Momentum.Cases.Report.Pictures;

/// <summary>Draws a <see cref="LineChart"/>.</summary>
internal static class LineChartPicture
{
    private const double Height = 250;

    // A curve that comes down to less than this share of its top is shown with its zero.
    private const double ZeroIsNear = 0.25;

    // A point that lies this near to the line through its neighbours is left out, as a share of the curve's height and width:
    // a fifth of a pixel.
    private const double Straight = 5e-4;

    /// <summary>The whole figure: heading, legend, plot, caption.</summary>
    /// <exception cref="ArgumentException">The chart has no curve, too many, or a curve of unequal or too few values.</exception>
    public static Markup Draw(LineChart chart, string id, double height = Height) => Markup.Of($"""
        <figure>
        <figcaption><h3>{chart.Title}</h3><p class="axis-name">{chart.Y.ToString()}</p>{Legend(chart)}</figcaption>
        {Plot(chart, id, height)}
        {(chart.Caption.Length == 0 ? Markup.None : Markup.Of($"<p class=\"caption\">{chart.Caption}</p>"))}
        </figure>
        """);

    /// <summary>The plot alone.</summary>
    public static Markup Plot(LineChart chart, string id, double height)
    {
        Check(chart);
        PlotModel plot = PlotSvg.Empty(chart.X, xPadding: 0.02);
        double lowest = chart.Series.Min(s => s.Y.Min());
        lowest = chart.Band is null ? lowest : Math.Min(lowest, chart.Band.Low.Min());
        if (lowest >= 0 && lowest < ZeroIsNear * chart.Series.Max(s => s.Y.Max()))
        {
            PlotSvg.Upright(plot).Minimum = 0;
        }

        EventLines.Add(plot, chart.Events, chart.Series.Min(s => s.X[0]), chart.Series.Max(s => s.X[^1]));
        if (chart.Band is { } band)
        {
            plot.Series.Add(Area(band));
        }

        for (int i = 0; i < chart.Series.Count; i++)
        {
            plot.Series.Add(Curve(chart.Series[i], i));
        }

        foreach (ChartMark mark in chart.Marks)
        {
            plot.Annotations.Add(Mark(mark, chart));
        }

        return PlotSvg.Draw(plot, id, height, Describe(chart), chart.FollowsAnimation);
    }

    /// <summary>The chart in words, for those who cannot see it.</summary>
    public static string Describe(LineChart chart)
    {
        string curves = string.Join(' ', chart.Series.Select(s => Describe(s, chart)));
        string band = chart.Band is { } all
            ? $" {all.Name}: between {new Figure(all.Low.Min(), chart.Y.Unit, 3)} and {new Figure(all.High.Max(), chart.Y.Unit, 3)}." : "";
        string marks = string.Concat(chart.Marks.Select(m => $" Marked: {m.Label}."));
        string events = string.Concat(chart.Events.Select(e => $" {e.Label} at {new Figure(e.X, chart.X.Unit, 3)}."));
        return $"{chart.Title}: {chart.Y.Name} against {chart.X.Name}. {curves}{band}{marks}{events}";
    }

    private static string Describe(ChartSeries series, LineChart chart)
    {
        int low = IndexOfExtreme(series.Y, -1);
        int high = IndexOfExtreme(series.Y, 1);
        string name = chart.Series.Count > 1 ? series.Name + ": f" : "F";
        return $"{name}rom {Y(0)} at {X(0)} to {Y(series.Y.Count - 1)} at {X(series.X.Count - 1)}; "
            + $"lowest {Y(low)} at {X(low)}, highest {Y(high)} at {X(high)}.";

        Figure X(int i) => new(series.X[i], chart.X.Unit, 3);
        Figure Y(int i) => new(series.Y[i], chart.Y.Unit, 3, zeroBelow: 1e-9 * (Math.Abs(series.Y[high]) + Math.Abs(series.Y[low])));
    }

    private static int IndexOfExtreme(IReadOnlyList<double> values, int sign)
    {
        int best = 0;
        for (int i = 1; i < values.Count; i++)
        {
            best = sign * values[i] > sign * values[best] ? i : best;
        }

        return best;
    }

    private static Markup Legend(LineChart chart) => chart.Series.Count < 2 && chart.Band is null ? Markup.None : Markup.Of($"""
        <ul class="legend">{Markup.Each(chart.Series.Select((s, i) => (s.Name, Colour: 1 + (s.Colour ?? i), Dash: i + 1)), s => Markup.Of(
            $"<li><svg viewBox=\"0 0 36 8\" aria-hidden=\"true\"><line class=\"stroke-curve-{s.Colour} dash-{s.Dash}\" x1=\"1\" x2=\"35\" y1=\"4\" y2=\"4\"/></svg>{s.Name}</li>"))}{(chart.Band is null ? Markup.None : Markup.Of(
            $"<li><svg viewBox=\"0 0 36 8\" aria-hidden=\"true\"><rect class=\"fill-band stroke-axis\" x=\"1\" y=\"0.5\" width=\"34\" height=\"7\"/></svg>{chart.Band.Name}</li>"))}</ul>
        """);

    private static LineSeries Curve(ChartSeries series, int index)
    {
        var curve = new LineSeries
        {
            Color = Ink.Curve(series.Colour ?? index),
            LineStyle = Ink.Dash(index),
            StrokeThickness = 2,
            LineJoin = LineJoin.Round,
        };
        curve.Points.AddRange(Corners(series));
        return curve;
    }

    /// <summary>Painted first, with thin edges that stand out where its fill is faint.</summary>
    private static AreaSeries Area(ChartBand band)
    {
        var area = new AreaSeries { Color = Ink.Axis, Color2 = Ink.Axis, Fill = Ink.Band, StrokeThickness = 0.75, LineStyle = LineStyle.Solid };
        area.Points.AddRange(Corners(new ChartSeries(band.Name, band.X, band.High)));
        area.Points2.AddRange(Corners(new ChartSeries(band.Name, band.X, band.Low)));
        return area;
    }

    /// <summary>The points that the curve needs, by the method of Douglas and Peucker (1973; from memory, it is short).</summary>
    private static IEnumerable<DataPoint> Corners(ChartSeries series)
    {
        int count = series.X.Count;
        bool[] kept = new bool[count];
        kept[0] = kept[^1] = true;
        double height = Math.Max(series.Y.Max() - series.Y.Min(), double.Epsilon);
        Stack<(int From, int To)> spans = new([(0, count - 1)]);
        while (spans.TryPop(out (int From, int To) span))
        {
            (int from, int to) = span;
            double run = series.X[to] - series.X[from];
            (int farthest, double distance) = (0, Straight * height);
            for (int i = from + 1; i < to; i++)
            {
                // Upright distance to the chord: never less than the true one, so that nothing is lost on steep parts.
                double part = run > 0 ? (series.X[i] - series.X[from]) / run : 0.5;
                double off = Math.Abs(series.Y[i] - (series.Y[from] + (part * (series.Y[to] - series.Y[from]))));
                (farthest, distance) = off > distance ? (i, off) : (farthest, distance);
            }

            if (farthest > 0)
            {
                kept[farthest] = true;
                spans.Push((from, farthest));
                spans.Push((farthest, to));
            }
        }

        return Enumerable.Range(0, count).Where(i => kept[i]).Select(i => new DataPoint(series.X[i], series.Y[i]));
    }

    private static PointAnnotation Mark(ChartMark mark, LineChart chart)
    {
        double left = chart.Series.Min(s => s.X[0]);
        double right = chart.Series.Max(s => s.X[^1]);
        double share = (mark.X - left) / (right - left);
        HorizontalAlignment beside = share > 0.5 ? HorizontalAlignment.Right : HorizontalAlignment.Left;
        return new PointAnnotation
        {
            X = mark.X,
            Y = mark.Y,
            Shape = MarkerType.Circle,
            Size = 4,
            Fill = Ink.Mark,
            Text = mark.Label,
            TextColor = Ink.Mark,
            TextMargin = 6,
            TextHorizontalAlignment = mark.Under && share is > 0.25 and < 0.75 ? HorizontalAlignment.Center : beside,
            TextVerticalAlignment = mark.Under ? VerticalAlignment.Top : VerticalAlignment.Middle,
            Layer = AnnotationLayer.AboveSeries,
        };
    }

    private static void Check(LineChart chart)
    {
        if (chart.Series.Count == 0 || chart.Series.Count > Ink.CurveCount)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"The chart '{chart.Title}' has {chart.Series.Count} curves; 1 to {Ink.CurveCount} can be told apart."), nameof(chart));
        }

        IEnumerable<ChartSeries> edges = chart.Band is not { } band ? [] : [new(band.Name, band.X, band.Low), new(band.Name, band.X, band.High)];
        foreach (ChartSeries series in chart.Series.Concat(edges))
        {
            if (series.X.Count != series.Y.Count || series.X.Count < 2)
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"The curve '{series.Name}' of '{chart.Title}' has {series.X.Count} abscissae and {series.Y.Count} ordinates; give as many of each, two or more."), nameof(chart));
            }
        }
    }
}
