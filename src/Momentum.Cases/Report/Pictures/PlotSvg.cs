using System.Globalization;
using System.Xml.Linq;
using OxyPlot;
using OxyPlot.Axes;

namespace Momentum.Cases.Report.Pictures;

/// <summary>Turns a plot into SVG that belongs to the page: its type, its colours, no inline style, unique ids.</summary>
internal static class PlotSvg
{
    /// <summary>Size in the type's own units: at about one unit a pixel the type is as large as the page's small print.</summary>
    public const double Width = 380;

    private const double FontSize = 12.5;
    private static readonly XNamespace _svg = "http://www.w3.org/2000/svg";

    /// <summary>An empty plot with the house's axes.</summary>
    public static PlotModel Empty(Model.ChartAxis x, double xPadding)
    {
        var plot = new PlotModel
        {
            Culture = CultureInfo.InvariantCulture,
            DefaultFont = "Arial",
            DefaultFontSize = FontSize,
            Padding = new OxyThickness(12, 6, 8, 2),
            PlotAreaBorderThickness = new OxyThickness(0),
            TextColor = Ink.Text,
        };
        // The upright axis first: its grid then lies under the line of the horizontal one.
        plot.Axes.Add(new LinearAxis
        {
            Position = AxisPosition.Left,
            TickStyle = TickStyle.None,
            MajorGridlineStyle = LineStyle.Solid,
            MajorGridlineColor = Ink.Grid,
            MajorGridlineThickness = 1,
            MinorTickSize = 0,
            MinimumPadding = 0.06,
            MaximumPadding = 0.1,
            IntervalLength = 32,
            LabelFormatter = Label,
        });
        plot.Axes.Add(new LinearAxis
        {
            Position = AxisPosition.Bottom,
            Title = x.ToString(),
            AxislineStyle = LineStyle.Solid,
            AxislineColor = Ink.Axis,
            TicklineColor = Ink.Axis,
            MajorTickSize = 4,
            MinorTickSize = 0,
            MinimumPadding = xPadding,
            MaximumPadding = xPadding,
            IntervalLength = 55,
            AxisTitleDistance = 9,
            LabelFormatter = Label,
        });
        return plot;
    }

    /// <summary>The horizontal axis.</summary>
    public static Axis Horizontal(PlotModel plot) => plot.Axes.First(a => a.IsHorizontal());

    /// <summary>The upright axis.</summary>
    public static Axis Upright(PlotModel plot) => plot.Axes.First(a => a.IsVertical());

    /// <summary>Draws the plot.</summary>
    /// <param name="plot">The plot, painted with <see cref="Ink"/>.</param>
    /// <param name="id">Unique on the page; letters, digits and hyphens.</param>
    /// <param name="height">Height, where the width is <see cref="Width"/>.</param>
    /// <param name="description">The picture in words.</param>
    /// <param name="cursor">Whether the animation moves a cursor along the horizontal axis.</param>
    public static Markup Draw(PlotModel plot, string id, double height, string description, bool cursor)
    {
        var exporter = new SvgExporter { Width = Width, Height = height, IsDocument = false };
        var svg = XElement.Parse(exporter.ExportToString(plot));
        foreach (XElement element in svg.DescendantsAndSelf())
        {
            TakeStyleApart(element);
            RoundPoints(element);
            element.SetAttributeValue("font-family", null);
            if (element.Attribute("id") is { } own)
            {
                own.Value = $"{id}-{own.Value}";
            }

            if (element.Attribute("clip-path") is { } clip)
            {
                clip.Value = clip.Value.Replace("#", $"#{id}-", StringComparison.Ordinal);
            }
        }

        svg.ReplaceAttributes(
            new XAttribute("class", "plot"),
            new XAttribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {Width} {height}")),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", description));
        if (cursor)
        {
            svg.Add(Cursor(plot));
        }

        return Markup.Trusted(svg.ToString(SaveOptions.DisableFormatting));
    }

    /// <summary>An upright line that the animation moves: at time t it stands at <c>data-origin + t data-scale</c>.</summary>
    private static XElement Cursor(PlotModel plot)
    {
        double origin = Horizontal(plot).Transform(0);
        return new XElement(
            _svg + "line",
            new XAttribute("class", "cursor"),
            new XAttribute("data-origin", Round(origin, 3)),
            new XAttribute("data-scale", Round(Horizontal(plot).Transform(1) - origin, 3)),
            new XAttribute("y1", Round(plot.PlotArea.Top, 1)),
            new XAttribute("y2", Round(plot.PlotArea.Bottom, 1)));
    }

    /// <summary>A policy that forbids inline style lets presentation attributes and classes through.</summary>
    private static void TakeStyleApart(XElement element)
    {
        string style = element.Attribute("style")?.Value ?? "";
        element.SetAttributeValue("style", null);
        foreach (string declaration in style.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] pair = declaration.Split(':', 2, StringSplitOptions.TrimEntries);
            element.SetAttributeValue(pair[0], pair[1]);
        }

        foreach (string paint in (string[])["fill", "stroke"])
        {
            if (element.Attribute(paint) is { } attribute && Ink.ClassOf(attribute.Value) is { } ink)
            {
                string classes = element.Attribute("class")?.Value is { } already ? already + " " : "";
                element.SetAttributeValue("class", $"{classes}{paint}-{ink}");
                attribute.Remove();
            }
        }
    }

    private static void RoundPoints(XElement element)
    {
        if (element.Attribute("points") is { } points)
        {
            points.Value = string.Join(' ', points.Value
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(p => string.Join(',', p.Split(',').Select(c => Round(double.Parse(c, CultureInfo.InvariantCulture), 1)))));
        }
    }

    private static string Round(double value, int decimals) =>
        Math.Round(value, decimals).ToString(CultureInfo.InvariantCulture);

    private static string Label(double value) =>
        value.ToString("G6", CultureInfo.InvariantCulture).Replace('-', '\u2212');
}
