using System.Globalization;
using Momentum.Cases.Report.Model;

namespace Momentum.Cases.Report.Pictures;

/// <summary>Draws a final spin rate split by cause, as a table with a bar in each row: right of the line adds, left takes away.</summary>
internal static class SpinSplitPicture
{
    private const double HalfWidth = 100;

    // So many digits of the largest part; all parts to the same place, so that they can be added up by eye.
    private const int Digits = 4;

    /// <summary>The table with its bars.</summary>
    public static Markup Draw(IReadOnlyList<SpinPart> parts, string unit)
    {
        if (parts.Count == 0)
        {
            return Markup.Trusted("""
                <h3>Where the final spin rate comes from</h3>
                <p class="absent">Not split by cause: without one of the causes there is no such motion to compare with.</p>
                """);
        }

        double largest = parts.Max(p => Math.Abs(p.Value));
        double scale = largest > 0 ? HalfWidth / largest : 0;
        int decimals = largest > 0 ? Math.Clamp(Digits - 1 - (int)Math.Floor(Math.Log10(largest)), 0, 12) : 0;
        return Markup.Of($"""
            <h3>Where the final spin rate comes from</h3>
            <table class="sensitivity split">
            <thead><tr><th scope="col">Cause, each taken away alone</th><th scope="col" class="number">Adds, {unit}</th><td class="bars"></td></tr></thead>
            <tbody>
            {Markup.Each(parts, p => Row(p, scale, decimals))}
            </tbody>
            </table>
            """);
    }

    private static Markup Row(SpinPart part, double scale, int decimals)
    {
        double rounded = Math.Round(part.Value, decimals);
        string sign = rounded < 0 ? "\u2212" : rounded > 0 && !part.IsWhole ? "+" : "";
        string number = sign + Math.Abs(rounded).ToString("F" + decimals, CultureInfo.InvariantCulture);
        return Markup.Of($"""
            <tr{(part.IsWhole ? Markup.Trusted(" class=\"sum\"") : Markup.None)}><th scope="row">{part.Name}</th><td class="number">{number}</td><td class="bars"><svg viewBox="-102 0 204 20" preserveAspectRatio="none" aria-hidden="true">{Bar(part.Value * scale, part.IsWhole ? "fill-curve-6" : "fill-curve-1")}<line class="stroke-axis" x1="0" x2="0" y1="0" y2="20"/></svg></td></tr>
            """);
    }

    private static Markup Bar(double length, string ink)
    {
        string x = Math.Round(Math.Min(0, length), 2).ToString(CultureInfo.InvariantCulture);
        string width = Math.Round(Math.Abs(length), 2).ToString(CultureInfo.InvariantCulture);
        return Markup.Of($"<rect class=\"{ink}\" x=\"{x}\" y=\"4\" width=\"{width}\" height=\"12\"/>");
    }
}
