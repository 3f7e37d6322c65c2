using System.Globalization;
using Momentum.Cases.Report.Model;

namespace Momentum.Cases.Report.Pictures;

/// <summary>From metres or degrees about the middle, y up, to the units of a square SVG, y down.</summary>
/// <param name="Half">Half the side of the square.</param>
/// <param name="Scale">SVG units a metre or degree.</param>
internal readonly record struct Drawing(double Half, double Scale)
{
    /// <summary>Abscissa of a place.</summary>
    public string X(double place) => Text(Half + (place * Scale));

    /// <summary>Ordinate of a place.</summary>
    public string Y(double place) => Text(Half - (place * Scale));

    /// <summary>A length.</summary>
    public string Size(double length) => Text(length * Scale);

    /// <summary>A round length of roughly a quarter of the picture's width: 1, 2 or 5 times a power of ten.</summary>
    public double ScaleBarLength => RoundLength(0.5 * Half / Scale);

    /// <summary>1, 2 or 5 times a power of ten, at most what is wanted.</summary>
    public static double RoundLength(double wanted)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        double leading = wanted / power;
        return power * (leading >= 5 ? 5 : leading >= 2 ? 2 : 1);
    }

    /// <summary>A bar of round length at the lower left, with its length.</summary>
    public Markup ScaleBar()
    {
        double length = ScaleBarLength;
        string y = Text((2 * Half) - 10);
        return Markup.Of($"""
            <path class="scale-bar" d="M8 {Text((2 * Half) - 14)}V{y}H{Text(8 + (length * Scale))}V{Text((2 * Half) - 14)}"/><text class="fill-text" x="8" y="{Text((2 * Half) - 19)}" font-size="12.5">{new Figure(length, "m", 1).ToString()}</text>
            """);
    }

    /// <summary>A number as SVG writes it.</summary>
    public static string Text(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);
}
