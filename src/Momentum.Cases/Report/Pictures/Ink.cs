using OxyPlot;

namespace Momentum.Cases.Report.Pictures;

/// <summary>
/// What a stroke or a fill of a picture stands for. The plotting library paints each with a colour that is only a token;
/// the token becomes a CSS class in <see cref="PlotSvg"/>, so that the style sheet chooses the colour for screen, dark
/// screen and paper.
/// </summary>
internal static class Ink
{
    private static readonly string[] _names =
        ["text", "axis", "grid", "event", "mark", "bar", "curve-1", "curve-2", "curve-3", "curve-4", "curve-5", "curve-6", "band"];

    private static readonly LineStyle[] _dashes =
        [LineStyle.Solid, LineStyle.Dash, LineStyle.DashDot, LineStyle.Dot, LineStyle.LongDash, LineStyle.LongDashDotDot];

    public static OxyColor Text { get; } = Token(0);

    public static OxyColor Axis { get; } = Token(1);

    public static OxyColor Grid { get; } = Token(2);

    public static OxyColor Event { get; } = Token(3);

    public static OxyColor Mark { get; } = Token(4);

    public static OxyColor Bar { get; } = Token(5);

    public static OxyColor Band { get; } = Token(12);

    /// <summary>How many curves stay apart.</summary>
    public static int CurveCount => _dashes.Length;

    /// <summary>Colour token of a curve, counted from 0.</summary>
    public static OxyColor Curve(int index) => Token(6 + index);

    /// <summary>Dash pattern of a curve: colour is never the only difference.</summary>
    public static LineStyle Dash(int index) => _dashes[index];

    /// <summary>Number of the curve whose colour and dash a cord takes, from 1; cords are counted from 0.</summary>
    public static int OfCord(int cord) => 1 + (cord % CurveCount);

    /// <summary>A dot in a cord's colour, to stand before its number; cords are counted from 0.</summary>
    public static Markup DotOfCord(int cord) => Markup.Of(
        $"<svg class=\"swatch\" viewBox=\"0 0 10 10\" aria-hidden=\"true\"><circle class=\"fill-curve-{OfCord(cord)}\" cx=\"5\" cy=\"5\" r=\"5\"/></svg>");

    /// <summary>The CSS class of a colour the plotting library wrote, or null for one that is not a token.</summary>
    public static string? ClassOf(string svgColour)
    {
        for (int i = 0; i < _names.Length; i++)
        {
            if (svgColour == $"rgb(1,0,{i})")
            {
                return _names[i];
            }
        }

        return null;
    }

    private static OxyColor Token(int index) => OxyColor.FromRgb(1, 0, (byte)index);
}
