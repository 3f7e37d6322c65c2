using System.Text;
using Momentum.Cases.Quantities;

namespace Momentum.Fuzz.Readers;

/// <summary>A quantity as text. The first byte says of which kind; a text is refused, or is a finite number with a tolerance that is one.</summary>
internal sealed class QuantityTexts : Reader
{
    private static readonly QuantityKind[] _kinds = [.. QuantityKinds.ByType.Values];

    internal override string Name => "quantity-text";

    internal override IEnumerable<string> Words => CaseWords.Units.Concat(["+/-", "±", " max", " %", "e+308", "e-308"]);

    /// <summary>The tables of units of every kind.</summary>
    internal static void MakeTables()
    {
        foreach (QuantityKind kind in _kinds)
        {
            QuantityText.Parse("1 unheard-of", kind, out _);
        }
    }

    internal override void WarmUp() => MakeTables();

    internal override void Read(byte[] input)
    {
        if (input.Length == 0)
        {
            return;
        }

        QuantityKind kind = _kinds[input[0] % _kinds.Length];
        QuantityText? read = QuantityText.Parse(Encoding.UTF8.GetString(input, 1, input.Length - 1), kind, out Trouble? trouble);
        Holds(read is null == trouble is not null, "A text is both read and refused, or neither.");
        Holds(read is null || (double.IsFinite(read.Si) && double.IsFinite(read.Tolerance.Shared.StandardDeviation) && double.IsFinite(read.Tolerance.Each.StandardDeviation)), "A text was read as a number that is not finite, or with a tolerance below zero.");
        Holds(trouble is null || (trouble.Message.Length > 0 && trouble.Remedy.Length > 0), "A refusal says nothing.");
    }
}
