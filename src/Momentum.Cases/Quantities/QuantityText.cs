using System.Globalization;
using System.Text.RegularExpressions;
using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>
/// A quantity written as text: a number, a unit, and perhaps a tolerance (<c>+/- 2 %</c>, one standard deviation;
/// <c>+/- 3 mm max</c>, limits either way).
/// </summary>
/// <param name="Si">The value in SI.</param>
/// <param name="SpreadSi">The tolerance in SI, absolute.</param>
/// <param name="SpreadKind">What the tolerance means.</param>
/// <param name="Text">The text itself.</param>
internal sealed partial record QuantityText(double Si, double SpreadSi, SpreadKind SpreadKind, string Text)
{
    /// <summary>A decimal number in ASCII digits with an optional exponent, without thousands separators.</summary>
    public const string NumberPattern = @"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?";

    private const int LongestText = 200;

    private static readonly Unit _one = new(null, 1);

    /// <summary>Reads a text as a quantity of the kind wanted.</summary>
    /// <returns>The quantity, or null with <paramref name="trouble"/> set.</returns>
    public static QuantityText? Parse(string text, QuantityKind kind, out Trouble? trouble)
    {
        if (text.Length > LongestText)
        {
            trouble = new Trouble($"it is longer than any quantity, {text.Length} characters", $"Write a number and a unit of {kind.Name}, for example \"{kind.Example}\".");
            return null;
        }

        string[] halves = text.Replace("±", "+/-", StringComparison.Ordinal).Split("+/-");
        if (halves.Length > 2)
        {
            trouble = new Trouble("it has more than one tolerance", $"Write one, for example \"{kind.Example} +/- 2 %\".");
            return null;
        }

        if (Amount(halves[0], kind, out trouble) is not var (number, unit))
        {
            return null;
        }

        double si = kind.ToSi(number, unit);
        trouble = OutOfRange(si, kind);
        if (trouble is not null)
        {
            return null;
        }

        if (halves.Length == 1)
        {
            return new QuantityText(si, 0, SpreadKind.None, text);
        }

        return Spread(halves[1], kind, si, out SpreadKind spreadKind, out trouble) is { } spread
            ? new QuantityText(si, spread, spreadKind, text)
            : null;
    }

    /// <summary>The tolerance behind <c>+/-</c>, as an absolute amount in SI.</summary>
    private static double? Spread(string text, QuantityKind kind, double si, out SpreadKind spreadKind, out Trouble? trouble)
    {
        string amount = text.Trim();
        spreadKind = SpreadKind.OneSigma;
        if (amount.EndsWith("max", StringComparison.Ordinal))
        {
            spreadKind = SpreadKind.Limits;
            amount = amount[..^3].TrimEnd();
        }

        bool isShare = amount.EndsWith('%') && kind.SiUnit != "1";
        QuantityKind amountKind = isShare ? QuantityKinds.ByType[typeof(Ratio)] : kind;
        if (Amount(amount, amountKind, out trouble) is not var (number, unit))
        {
            trouble = trouble! with { Message = "in its tolerance, " + trouble.Message };
            return null;
        }

        double spread = amountKind.ToSi(number, unit) * (isShare ? Math.Abs(si) : 1);
        string form = $"Write for example \"{kind.Example} +/- 2 %\" (one sigma), or an amount with its unit; end it with max for limits either way.";
        if (isShare && si == 0)
        {
            trouble = new Trouble("a tolerance in per cent of zero is zero", $"Give the tolerance as an amount with its unit, for example \"+/- 1 {kind.SiUnit}\".");
            return null;
        }

        if (!(spread > 0))
        {
            trouble = new Trouble("its tolerance is not more than zero", form);
            return null;
        }

        if (isShare && spread > Math.Abs(si))
        {
            trouble = new Trouble("its tolerance is larger than the value itself", form);
            return null;
        }

        trouble = OutOfRange(spread, kind) is { } range ? range with { Message = "in its tolerance, " + range.Message } : null;
        return trouble is null ? spread : null;
    }

    private static (double Number, Unit Unit)? Amount(string text, QuantityKind kind, out Trouble? trouble)
    {
        string trimmed = text.Trim();
        string example = $"Write for example \"{kind.Example}\".";
        Match match = LeadingNumber().Match(trimmed);
        if (!match.Success)
        {
            trouble = new Trouble(
                trimmed.Length == 0 ? "it is empty" : "it does not begin with a finite decimal number in the digits 0 to 9",
                $"Write a number and a unit of {kind.Name}. {example}");
            return null;
        }

        string rest = trimmed[match.Length..].Trim();
        if (rest.StartsWith(','))
        {
            trouble = new Trouble("a comma is neither a decimal point nor a thousands separator here", $"Use a point for decimals and no separator. {example}");
            return null;
        }

        double number = double.Parse(match.ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number))
        {
            trouble = new Trouble("the number overflows", example);
            return null;
        }

        if (rest.Length == 0 && kind.SiUnit == "1")
        {
            trouble = null;
            return (number, _one);
        }

        if (rest.Length == 0)
        {
            trouble = new Trouble($"the unit is missing: {OneOf(kind)} is wanted", example);
            return null;
        }

        string normalised = QuantityKind.Normalise(rest);
        if (!kind.TryFind(normalised, out Unit unit))
        {
            trouble = WrongUnit(rest, normalised, kind);
            return null;
        }

        trouble = null;
        return (number, unit);
    }

    private static Trouble WrongUnit(string written, string normalised, QuantityKind kind)
    {
        string shown = Syntax.TomlText.Glimpse(written);
        string example = $"Write for example \"{kind.Example}\".";
        string? hint = Confusions.Between(normalised, kind.Name);
        string[] found = [.. QuantityKinds.WithUnit(normalised).Select(k => k.Name)];
        if (found.Length == 0)
        {
            // Kinds the case file has no use for still deserve their name in the message.
            found = [.. Quantity.Infos.Where(info => UnitsNetSetup.Default.UnitParser.TryParse(normalised, info.UnitType, CultureInfo.InvariantCulture, out _)).Select(info => Words(info.Name)).Take(3)];
        }

        if (kind.Units.Keys.FirstOrDefault(known => known.Equals(normalised, StringComparison.OrdinalIgnoreCase)) is { } sameLetters)
        {
            return new Trouble($"\"{shown}\" is not a unit of {kind.Name}: capitals matter", $"Did you mean \"{sameLetters}\"? {example}");
        }

        if (found.Length > 0)
        {
            return new Trouble($"\"{shown}\" is a unit of {string.Join(" or ", found)}, but {OneOf(kind)} is wanted", hint ?? example);
        }

        string? near = hint is null ? Nearest.To(normalised, kind.Units.Keys) : null;
        return new Trouble($"\"{shown}\" is not a unit of {kind.Name}", hint ?? (near is null ? example : $"Did you mean \"{near}\"? {example}"));
    }

    private static Trouble? OutOfRange(double si, QuantityKind kind)
    {
        double size = Math.Abs(si);
        if (double.IsFinite(size) && size <= kind.Largest && (size == 0 || size >= kind.Smallest))
        {
            return null;
        }

        return new Trouble(
            $"it is outside the range this program computes in ({Shown(kind.Smallest)} to {Shown(kind.Largest)} {kind.SiUnit})",
            $"Check the exponent and the unit. Write for example \"{kind.Example}\".");
    }

    private static string Shown(double number) => number.ToString("0.###e+0", CultureInfo.InvariantCulture);

    private static string OneOf(QuantityKind kind) => kind.OneOf;

    private static string Words(string pascal) => string.Concat(pascal.Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : char.ToLowerInvariant(c).ToString()));

    [GeneratedRegex("^" + NumberPattern, RegexOptions.CultureInvariant)]
    private static partial Regex LeadingNumber();
}
