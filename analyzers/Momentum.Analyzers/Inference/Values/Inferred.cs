using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// What is known of a value at one place in the code: one of <see cref="Measured"/>, <see cref="BareNumber"/>,
/// <see cref="TupleValue"/>, <see cref="FunctionValue"/>, <see cref="ObjectValue"/>, <see cref="Choice"/>, or nothing.
/// Immutable. For an array or a sequence, what is known of each element.
/// </summary>
internal abstract class Inferred
{
    /// <summary>Nothing is known; nothing is ever reported of it.</summary>
    internal static Inferred Unknown { get; } = new Nothing();

    /// <summary>The frame, point and sign convention of the components, where known.</summary>
    internal virtual Context Context => Context.None;

    internal bool HasUnit => this is Measured { Unit: not null };

    /// <summary>Whether the unit is known whole, and does not hang on what a caller passes.</summary>
    internal bool IsConcrete => this is Measured { Unit: not null, Parameters.IsEmpty: true };

    internal bool IsNumber => this is BareNumber;

    internal bool IsUnknown => ReferenceEquals(this, Unknown);

    /// <summary>Whether it is more than a number, so that no power of a parameter can stand for it.</summary>
    internal bool IsStructured => this is TupleValue or FunctionValue or ObjectValue;

    internal static Measured In(Unit unit, Evidence evidence, Origin origin, Context? context = null) => Measured.In(unit, evidence, origin, context);

    internal static Inferred Of(IParameterSymbol parameter) => Measured.Of(parameter);

    internal static Inferred Bare(double value) => new BareNumber(value);

    internal static Inferred Tuple(ImmutableArray<Inferred> elements) => new TupleValue(elements);

    internal static Inferred Delegate(Summary summary) => new FunctionValue(summary);

    /// <summary>The value on either of two paths.</summary>
    internal static Inferred Join(Inferred left, Inferred right) => (left, right) switch
    {
        _ when ReferenceEquals(left, right) => left,
        (BareNumber one, BareNumber other) => one.Join(other),
        (BareNumber, Measured { Unit: not null } measured) => measured,
        (Measured { Unit: not null } measured, BareNumber) => measured,
        (Measured one, Measured other) => one.Join(other),
        (TupleValue one, TupleValue other) => one.Join(other),
        (ObjectValue one, ObjectValue other) => one.Join(other),
        (BareNumber, _) or (_, BareNumber) => Unknown,
        _ => Measured.Within(left.Context.Meet(right.Context), left.Origins(), right.Origins()),
    };

    /// <summary>The value of a conditional expression, one of whose arms gives <paramref name="left"/> and another <paramref name="right"/>.</summary>
    internal static Inferred Either(Inferred left, Inferred right)
    {
        Inferred joined = Join(left, right);
        return joined.HasUnit || joined.IsNumber || ReferenceEquals(joined, left) ? joined : Choice.Of(joined, left, right);
    }

    /// <summary>Whether two values are known to be the same thing: where a loop has come to rest.</summary>
    internal bool SameAs(Inferred other) => ReferenceEquals(this, other) || Same(other);

    internal Inferred Times(Inferred other) => Multiply(this, other, Dimension.Whole);

    internal Inferred Over(Inferred other) => Multiply(this, other, -Dimension.Whole);

    /// <summary>To a power in sixths.</summary>
    internal Inferred Power(int sixths) => sixths == Dimension.Whole ? this : Raised(sixths);

    /// <summary>With the other sign.</summary>
    internal virtual Inferred Negated() => this;

    /// <summary>As kept in a variable.</summary>
    internal virtual Inferred Kept() => this;

    /// <summary>As read from a variable; one of a type that <paramref name="counts"/> has whole numbers only.</summary>
    internal virtual Inferred FromVariable(bool counts) => Kept();

    /// <summary>Only the frame, point and sign: what is left when a quantity type takes the unit over.</summary>
    internal Inferred OnlyContext() => Measured.Within(Context, Origins(), ImmutableArray<Origin>.Empty);

    /// <summary>With the context of a sum.</summary>
    internal virtual Inferred WithContextOf(Inferred left, Inferred right) => this;

    /// <summary>Without the numbers that it was multiplied by.</summary>
    internal virtual Inferred WithoutFactors() => this;

    /// <summary>An object that holds <paramref name="value"/> in <paramref name="member"/>; this as it is, where it is no object or nothing is known of the value.</summary>
    internal virtual Inferred WithMember(ISymbol member, Inferred value) => this;

    /// <summary>The value with parameters replaced by what the caller passed.</summary>
    internal virtual Inferred With(IReadOnlyDictionary<IParameterSymbol, Inferred> arguments) => this;

    /// <summary>Where what is known came from.</summary>
    internal virtual ImmutableArray<Origin> Origins() => ImmutableArray<Origin>.Empty;

    private protected virtual Inferred Raised(int sixths) => Unknown;

    private protected abstract bool Same(Inferred other);

    private static Inferred Multiply(Inferred left, Inferred right, int sixths) => (left, right) switch
    {
        // Literals stay apart as factors only beside a unit; two of them fold.
        (BareNumber one, BareNumber other) => one.Times(other, sixths),
        (Measured measured, BareNumber factor) => measured.Scaled(factor, sixths),
        (BareNumber factor, Measured measured) when sixths > 0 => measured.Scaled(factor, sixths),
        (BareNumber factor, Measured measured) => measured.Power(-Dimension.Whole) is Measured inverse ? inverse.Scaled(factor, Dimension.Whole) : Unknown,
        (Measured one, Measured other) => one.Times(other, sixths),
        (Choice choice, BareNumber or Measured) => choice.Each(arm => Multiply(arm, right, sixths)),
        (BareNumber or Measured, Choice choice) => choice.Each(arm => Multiply(left, arm, sixths)),
        _ => Unknown,
    };

    private sealed class Nothing : Inferred
    {
        internal override Inferred WithMember(ISymbol member, Inferred value) => ObjectValue.Empty.WithMember(member, value) is ObjectValue { IsEmpty: false } made ? made : this;

        private protected override bool Same(Inferred other) => false;
    }
}
