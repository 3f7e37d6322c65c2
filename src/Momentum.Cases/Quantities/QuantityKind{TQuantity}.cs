using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>A kind of quantity with its UnitsNet type.</summary>
internal sealed class QuantityKind<TQuantity>(
    string name, string siUnit, string example, double smallest, double largest, Type unitType, Func<double, TQuantity> fromSi, Func<TQuantity, double> toSi)
    : QuantityKind(name, siUnit, example, smallest, largest, unitType)
    where TQuantity : struct, IQuantity
{
    // Beyond it a number is out of range in any unit, and UnitsNet throws where a conversion overflows.
    private const double LargestNumber = 1e200;

    public override object State(QuantityText parsed) =>
        new Stated<TQuantity>(fromSi(parsed.Si), parsed.Tolerance, parsed.Text);

    public override object StateExactly(double si) => new Stated<TQuantity>(fromSi(si), Tolerance.None, "");

    public override double SiOf(object stated) => toSi(((Stated<TQuantity>)stated).Value);

    public override object Limit(QuantityText parsed, bool isUpper, bool includesBound, string text) =>
        new Limit<TQuantity>(isUpper, includesBound, fromSi(parsed.Si), text);

    public override object Band(double least, double most, string text) =>
        new Limit<TQuantity>(true, true, fromSi(most), text) { Least = fromSi(least) };

    public override double ToSi(double number, Unit unit) =>
        unit.Known is not { } known ? number * unit.SiFactor
        : Math.Abs(number) > LargestNumber ? double.CopySign(double.PositiveInfinity, number)
        : toSi((TQuantity)Quantity.From(number, known));
}
