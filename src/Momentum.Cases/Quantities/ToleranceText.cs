using System.Globalization;
using System.Text.RegularExpressions;
using Momentum.Dispersion;

namespace Momentum.Cases.Quantities;

/// <summary>
/// The tolerances behind a value: <c>+/- 2 %</c>, <c>+/- 6 % 3 sigma</c>, <c>+/- 0.3 mm max</c>, <c>+0.2/-0 mm max</c>, and
/// behind either <c>each</c>, for what each weight or cord has of its own.
/// </summary>
internal static partial class ToleranceText
{
    /// <summary>What a tolerance may look like, for messages and documents.</summary>
    public const string Forms =
        "\"+/- 2 %\" (one sigma), \"+/- 6 % 3 sigma\", \"+/- 3 mm max\" (limits, any value between equally likely), \"+0.2/-0 mm max\", and any of these with \"each\" behind it for what each weight or cord has of its own";

    /// <summary>Divides a text into the value and what follows it.</summary>
    public static (string Value, string Tolerances) Split(string text)
    {
        Match first = Beginning().Match(text);
        return first.Success ? (text[..first.Index], text[first.Index..]) : (text, "");
    }

    /// <summary>Reads the tolerances of a value.</summary>
    /// <param name="text">One or two of them: one that all share, and one that each has.</param>
    /// <param name="kind">What kind of quantity the value is.</param>
    /// <param name="si">The value.</param>
    /// <param name="trouble">Why not.</param>
    /// <returns>The tolerances, or null with <paramref name="trouble"/> set.</returns>
    public static Tolerance? Parse(string text, QuantityKind kind, double si, out Trouble? trouble)
    {
        ScatterLaw shared = ScatterLaw.None;
        ScatterLaw each = ScatterLaw.None;
        MatchCollection beginnings = Beginning().Matches(text);
        for (int i = 0; i < beginnings.Count; i++)
        {
            int from = beginnings[i].Index;
            string one = text[from..(i + 1 < beginnings.Count ? beginnings[i + 1].Index : text.Length)].Trim();
            if (One(one, kind, si, out bool isEach, out trouble) is not { } law)
            {
                return null;
            }

            if ((isEach ? each : shared).Shape != ScatterShape.None)
            {
                trouble = new Trouble(
                    isEach ? "it has more than one tolerance of each" : "it has more than one tolerance",
                    $"Write one for what all share and at most one more that ends with each, for example \"{kind.Example} +/- 2 % +/- 0.5 % each\".");
                return null;
            }

            (shared, each) = isEach ? (shared, law) : (law, each);
        }

        trouble = null;
        return new Tolerance(shared, each);
    }

    private static ScatterLaw? One(string text, QuantityKind kind, double si, out bool isEach, out Trouble? trouble)
    {
        string amount = Without("each", text, out isEach);
        amount = Without("max", amount, out bool isMax);
        double sigmas = 1;
        if (Sigmas().Match(amount) is { Success: true } stated)
        {
            if (isMax)
            {
                trouble = new Trouble("its tolerance is both limits (max) and a number of standard deviations (sigma)", Form(kind));
                return null;
            }

            sigmas = double.Parse(stated.Groups["n"].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);
            if (!(sigmas > 0))
            {
                trouble = new Trouble("its tolerance is not of more than zero standard deviations", Form(kind));
                return null;
            }

            amount = amount[..stated.Index];
        }

        double above;
        double below;
        if (amount.StartsWith("+/-", StringComparison.Ordinal))
        {
            if (Amount(amount[3..], kind, si, out trouble) is not { } either)
            {
                return null;
            }

            above = below = either;
        }
        else
        {
            Match cut = Between().Match(amount);
            string up = amount[1..cut.Index].Trim();
            string down = amount[(cut.Index + cut.Length)..].Trim();

            // "+0.2/-0 mm": one unit serves both.
            if (QuantityText.IsBareNumber(up))
            {
                up += QuantityText.UnitOf(down);
            }

            if (Amount(up, kind, si, out trouble) is not { } upper || Amount(down, kind, si, out trouble) is not { } lower)
            {
                return null;
            }

            (above, below) = (upper, lower);
        }

        if (!(above >= 0 && below >= 0 && above + below > 0))
        {
            trouble = new Trouble("its tolerance is not more than zero", Form(kind));
            return null;
        }

        trouble = null;
        return isMax ? ScatterLaw.Uniform(below, above) : ScatterLaw.Normal(below / sigmas, above / sigmas);
    }

    /// <summary>An amount in SI, absolute: of a share of the value too.</summary>
    private static double? Amount(string text, QuantityKind kind, double si, out Trouble? trouble)
    {
        string amount = text.Trim();
        bool isShare = amount.EndsWith('%') && kind.SiUnit != "1";
        QuantityKind amountKind = isShare ? QuantityKinds.ByType[typeof(UnitsNet.Ratio)] : kind;
        if (QuantityText.Amount(amount, amountKind, out trouble) is not var (number, unit))
        {
            trouble = trouble! with { Message = "in its tolerance, " + trouble.Message };
            return null;
        }

        double width = amountKind.ToSi(number, unit) * (isShare ? Math.Abs(si) : 1);
        if (isShare && si == 0)
        {
            trouble = new Trouble("a tolerance in per cent of zero is zero", $"Give the tolerance as an amount with its unit, for example \"+/- 1 {kind.SiUnit}\".");
            return null;
        }

        if (isShare && width > Math.Abs(si))
        {
            trouble = new Trouble("its tolerance is larger than the value itself", Form(kind));
            return null;
        }

        trouble = QuantityText.OutOfRange(width, kind) is { } range ? range with { Message = "in its tolerance, " + range.Message } : null;
        return trouble is null ? width : null;
    }

    private static string Form(QuantityKind kind) => $"Write behind \"{kind.Example}\" for example {Forms}.";

    private static string Without(string word, string text, out bool found)
    {
        string trimmed = text.TrimEnd();
        found = trimmed.EndsWith(word, StringComparison.Ordinal) && trimmed.Length > word.Length && !char.IsLetter(trimmed[^(word.Length + 1)]);
        return found ? trimmed[..^word.Length].TrimEnd() : trimmed;
    }

    // Behind a value: "+/-", or "+" and a number that goes on to "/-".
    [GeneratedRegex(@"\+/-|(?<=\s|^)\+(?=\s*[0-9.][^+]*?/\s*-)", RegexOptions.CultureInvariant)]
    private static partial Regex Beginning();

    [GeneratedRegex(@"/\s*-", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex(@"\s(?<n>" + QuantityText.NumberPattern + @")\s*sigma$", RegexOptions.CultureInvariant)]
    private static partial Regex Sigmas();
}
