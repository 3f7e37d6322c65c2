using Momentum.Cases.Report.Model;
using OxyPlot;
using OxyPlot.Annotations;

namespace Momentum.Cases.Report.Pictures;

/// <summary>Upright lines with their names, stepped down so that names of neighbours do not meet.</summary>
internal static class EventLines
{
    private const double LineHeight = 15;

    /// <summary>Adds the lines, and makes room above the curves for their names.</summary>
    public static void Add(PlotModel plot, IReadOnlyList<ChartEvent> events, double left, double right)
    {
        PlotSvg.Upright(plot).MaximumPadding += 0.09 * events.Count;
        for (int i = 0; i < events.Count; i++)
        {
            ChartEvent e = events[i];
            bool nameToTheRight = e.X - left < 0.4 * (right - left);
            plot.Annotations.Add(new LineAnnotation
            {
                Type = LineAnnotationType.Vertical,
                X = e.X,
                Color = Ink.Event,
                LineStyle = LineStyle.Dot,
                StrokeThickness = 1.2,
                Layer = AnnotationLayer.BelowSeries,
                Text = e.Label,
                TextColor = Ink.Event,
                TextOrientation = AnnotationTextOrientation.Horizontal,
                TextLinePosition = 1,
                TextPadding = 0,
                TextMargin = i * LineHeight,
                TextHorizontalAlignment = nameToTheRight ? HorizontalAlignment.Left : HorizontalAlignment.Right,
                TextVerticalAlignment = VerticalAlignment.Top,
            });
        }
    }
}
