using System.Globalization;
using Momentum.Cases.Answers;

namespace Momentum.Cases.Report.Model;

/// <summary>A number as a reader sees it: rounded to significant digits, with its unit.</summary>
internal readonly record struct Figure
{
    private const char Minus = '\u2212';
    private const char NarrowSpace = '\u202F';

    /// <summary>A number with its unit.</summary>
    /// <param name="value">The number; finite.</param>
    /// <param name="unit">The unit, empty for a ratio.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    /// <param name="zeroBelow">Magnitude under which the number is what rounding left of nothing, and is shown as 0.</param>
    /// <exception cref="ArgumentException">The number is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The digits are out of range.</exception>
    public Figure(double value, string unit, int digits = 4, double zeroBelow = 0)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentException($"A figure must be a finite number, and this one is {value}.", nameof(value));
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digits, 15);
        Value = Math.Abs(value) < zeroBelow ? 0 : value;
        Unit = unit;
        Digits = digits;
    }

    /// <summary>A figure of the answer, with as many digits as its spread leaves, or four.</summary>
    public static Figure Of(AnswerFigure figure) => new(figure.Shown, figure.Unit, figure.Spread is { Shown: > 0 } spread && figure.Shown != 0
        ? Math.Clamp(2 + (int)(Math.Floor(Math.Log10(Math.Abs(figure.Shown))) - Math.Floor(Math.Log10(spread.Shown))), 1, 6)
        : 4);

    /// <summary>The number in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>The unit.</summary>
    public string Unit { get; }

    /// <summary>Significant digits shown.</summary>
    public int Digits { get; }

    /// <summary>The number alone: 4.500, −0.0123, 12 345, 1.20 × 10⁻⁷.</summary>
    public string Number
    {
        get
        {
            if (Value == 0)
            {
                return "0";
            }

            // The exponent must be that of the rounded number: 9.9996 to four digits is 10.00.
            string scientific = Math.Abs(Value).ToString("E" + (Digits - 1), CultureInfo.InvariantCulture);
            int e = scientific.IndexOf('E', StringComparison.Ordinal);
            int exponent = int.Parse(scientific.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
            string sign = Value < 0 ? Minus.ToString() : "";
            if (exponent is < -4 or > 7)
            {
                return $"{sign}{scientific[..e]}\u00A0×\u00A010{Superscript(exponent)}";
            }

            int decimals = Math.Max(0, Digits - 1 - exponent);
            string plain = Math.Abs(Value).ToString("F" + decimals, CultureInfo.InvariantCulture);
            return sign + GroupThousands(plain);
        }
    }

    /// <summary>The number and its unit, kept on one line; the sign of a degree stands close, as SI has it.</summary>
    public override string ToString() => Unit switch
    {
        null or "" => Number,
        "°" => $"{Number}°",
        _ => $"{Number}\u00A0{Unit}",
    };

    private static string GroupThousands(string plain)
    {
        int whole = plain.IndexOf('.', StringComparison.Ordinal);
        whole = whole < 0 ? plain.Length : whole;
        if (whole < 5)
        {
            return plain;
        }

        for (int i = whole - 3; i > 0; i -= 3)
        {
            plain = plain.Insert(i, NarrowSpace.ToString());
        }

        return plain;
    }

    private static string Superscript(int exponent) =>
        string.Concat(exponent.ToString(CultureInfo.InvariantCulture).Select(c => c == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹"[c - '0']));
}
