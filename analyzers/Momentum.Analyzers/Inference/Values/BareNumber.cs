namespace Momentum.Analyzers.Inference;

/// <summary>A bare number: neutral in a sum, a pure number or a conversion in a product.</summary>
/// <param name="value">The number; NaN where it is not known.</param>
/// <param name="isVariable">Whether it was read from a variable, which may stand for anything.</param>
internal sealed class BareNumber(double value, bool isVariable = false) : Inferred
{
    internal double Value { get; } = value;

    internal bool IsVariable { get; } = isVariable;

    internal BareNumber Times(BareNumber other, int sixths) => new(sixths > 0 ? Value * other.Value : Value / other.Value, IsVariable || other.IsVariable);

    internal BareNumber Join(BareNumber other) =>
        Value.Equals(other.Value) && IsVariable == other.IsVariable ? this : new(double.NaN, IsVariable || other.IsVariable);

    internal override Inferred Negated() => new BareNumber(-Value, IsVariable);

    internal override Inferred FromVariable(bool counts) => IsVariable ? this : counts ? new BareNumber(double.NaN) : new BareNumber(Value, isVariable: true);

    private protected override Inferred Raised(int sixths) => new BareNumber(Math.Pow(Value, sixths / (double)Algebra.Dimension.Whole));

    private protected override bool Same(Inferred other) => other is BareNumber number && Value.Equals(number.Value) && IsVariable == number.IsVariable;
}
