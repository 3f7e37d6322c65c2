using System.Globalization;
using System.Text.RegularExpressions;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>A quantity written as text: a number and a unit, or a range of them, and perhaps tolerances.</summary>
/// <param name="Si">The value in SI; of a range, its middle.</param>
/// <param name="Tolerance">How it scatters, offsets in SI.</param>
/// <param name="Text">The text itself.</param>
internal sealed partial record QuantityText(double Si, Tolerance Tolerance, string Text)
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

        (string value, string tolerances) = ToleranceText.Split(text.Replace("±", "+/-", StringComparison.Ordinal));
        if (Value(value, kind, out ScatterLaw range, out trouble) is not { } si)
        {
            return null;
        }

        if (tolerances.Length == 0)
        {
            return new QuantityText(si, range.Shape == ScatterShape.None ? Tolerance.None : new Tolerance(range, ScatterLaw.None), text);
        }

        if (ToleranceText.Parse(tolerances, kind, si, out trouble) is not { } tolerance)
        {
            return null;
        }

        if (range.Shape != ScatterShape.None && tolerance.Shared.Shape != ScatterShape.None)
        {
            trouble = new Trouble("it is a range and has a tolerance besides", $"Write one of the two; behind a range only what each has of its own, with each.");
            return null;
        }

        return new QuantityText(si, range.Shape == ScatterShape.None ? tolerance : tolerance with { Shared = range }, text);
    }

    /// <summary>Reads a text that is itself a tolerance, about zero: an error whose size is stated.</summary>
    /// <returns>The size as the value, with its law; or null with <paramref name="trouble"/> set.</returns>
    public static QuantityText? ParseScatter(string text, QuantityKind kind, out Trouble? trouble)
    {
        string plain = text.Replace("±", "+/-", StringComparison.Ordinal).Trim();
        string signed = plain.StartsWith('+') ? plain : "+/- " + plain;
        if (ToleranceText.Parse(signed, kind, 0, out trouble) is not { } tolerance)
        {
            return null;
        }

        ScatterLaw law = tolerance.Shared.Shape == ScatterShape.None ? tolerance.Each : tolerance.Shared;
        return new QuantityText(Math.Max(law.Below, law.Above), tolerance, text);
    }

    /// <summary>Whether a text is a number and nothing else.</summary>
    internal static bool IsBareNumber(string text) => LeadingNumber().Match(text) is { Success: true } match && match.Length == text.Length;

    /// <summary>What follows the number of an amount.</summary>
    internal static string UnitOf(string amount) => LeadingNumber().Match(amount) is { Success: true } match ? amount[match.Length..] : "";

    /// <summary>A value, or a range, of which it is the middle.</summary>
    private static double? Value(string text, QuantityKind kind, out ScatterLaw range, out Trouble? trouble)
    {
        range = ScatterLaw.None;
        string[] ends = Between().Split(text.Trim());
        if (ends.Length != 2)
        {
            return One(text, out trouble);
        }

        string from = ends[0].Trim();
        if (IsBareNumber(from))
        {
            from += UnitOf(ends[1].Trim());
        }

        if (One(from, out trouble) is not { } least || One(ends[1], out trouble) is not { } most)
        {
            return null;
        }

        if (!(least < most))
        {
            trouble = new Trouble("its range does not go upward", "Write the smaller end first, for example \"58 to 62 rpm\".");
            return null;
        }

        double half = 0.5 * (most - least);
        range = ScatterLaw.Uniform(half, half);
        return least + half;

        double? One(string one, out Trouble? why)
        {
            if (Amount(one, kind, out why) is not var (number, unit))
            {
                return null;
            }

            double si = kind.ToSi(number, unit);
            why = OutOfRange(si, kind);
            return why is null ? si : null;
        }
    }

    internal static (double Number, Unit Unit)? Amount(string text, QuantityKind kind, out Trouble? trouble)
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

    internal static Trouble? OutOfRange(double si, QuantityKind kind)
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

    [GeneratedRegex(@"\s+to\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex("^" + NumberPattern, RegexOptions.CultureInvariant)]
    private static partial Regex LeadingNumber();
}
