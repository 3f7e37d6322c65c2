using System.Globalization;
using Momentum.Cases.Report.Model;

namespace Momentum.Cases.Report.Pictures;

/// <summary>Draws a <see cref="Sensitivity"/> as a table with a bar in each row, so that the figures stay legible and aligned.</summary>
internal static class SensitivityPicture
{
    private const double HalfWidth = 100;

    /// <summary>The whole table with its bars.</summary>
    public static Markup Draw(Sensitivity sensitivity)
    {
        double largest = sensitivity.Bars.Max(b => Math.Max(Math.Abs(b.AtLow), Math.Abs(b.AtHigh)));
        double scale = largest > 0 ? HalfWidth / largest : 0;
        return Markup.Of($"""
            <figure class="wide">
            <figcaption><h3>Sensitivity to the tolerances</h3></figcaption>
            <table class="sensitivity">
            <caption class="axis-name">Change of {sensitivity.Result.Name}, {sensitivity.Result.Unit}, with one input at a time off by one standard deviation</caption>
            <thead><tr><th scope="col">Input and tolerance</th><th scope="col" class="number">{Swatch("fill-curve-1")}Below</th><th scope="col" class="number">{Swatch("fill-curve-2")}Above</th><td class="bars"></td></tr></thead>
            <tbody>
            {Markup.Each(sensitivity.Bars, b => Row(b, sensitivity.Result.Unit, scale))}
            </tbody>
            </table>
            {(sensitivity.Caption.Length == 0 ? Markup.None : Markup.Of($"<p class=\"caption\">{sensitivity.Caption}</p>"))}
            </figure>
            """);
    }

    private static Markup Swatch(string ink) => Markup.Of(
        $"<svg class=\"swatch\" viewBox=\"0 0 10 10\" aria-hidden=\"true\"><rect class=\"{ink}\" width=\"10\" height=\"10\"/></svg>");

    private static Markup Row(SensitivityBar bar, string unit, double scale) => Markup.Of($"""
        <tr><th scope="row">{bar.Input}<small>{bar.Tolerance}</small></th><td class="number">{Signed(bar.AtLow, unit)}</td><td class="number">{Signed(bar.AtHigh, unit)}</td><td class="bars">{Bars(bar, scale)}</td></tr>
        """);

    private static Markup Bars(SensitivityBar bar, double scale) => Markup.Of($"""
        <svg viewBox="-102 0 204 20" preserveAspectRatio="none" aria-hidden="true">{Bar(bar.AtLow * scale, 2, "fill-curve-1")}{Bar(bar.AtHigh * scale, 11, "fill-curve-2")}<line class="stroke-axis" x1="0" x2="0" y1="0" y2="20"/></svg>
        """);

    private static Markup Bar(double length, int y, string ink)
    {
        string x = Math.Round(Math.Min(0, length), 2).ToString(CultureInfo.InvariantCulture);
        string width = Math.Round(Math.Abs(length), 2).ToString(CultureInfo.InvariantCulture);
        return Markup.Of($"<rect class=\"{ink}\" x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"7\"/>");
    }

    private static string Signed(double value, string unit) => (value > 0 ? "+" : "") + new Figure(value, unit, 2);
}
