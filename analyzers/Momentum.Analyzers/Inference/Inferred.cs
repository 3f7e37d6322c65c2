using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// What is known of a value at one place in the code. Immutable. For an array or a sequence, what is known of each element.
/// </summary>
internal sealed class Inferred
{
    // More factors than this in one product is no longer somebody converting a unit.
    private const int MostFactors = 8;
    private const int MostOrigins = 3;
    private const int MostAlternatives = 8;

    private static readonly ImmutableDictionary<ISymbol, Inferred> _noMembers = ImmutableDictionary.Create<ISymbol, Inferred>(SymbolEqualityComparer.Default);

    private Inferred()
    {
    }

    /// <summary>Nothing is known; nothing is ever reported of it.</summary>
    internal static Inferred Unknown { get; } = new();

    /// <summary>The unit, or null where it is not known. Where <see cref="Parameters"/> is not empty, the known part of it.</summary>
    internal Unit? Unit { get; private set; }

    /// <summary>Powers, in sixths, of parameters whose unit the caller decides.</summary>
    internal ImmutableArray<KeyValuePair<IParameterSymbol, int>> Parameters { get; private set; } = ImmutableArray<KeyValuePair<IParameterSymbol, int>>.Empty;

    /// <summary>The bare numbers that a value with a unit has been multiplied by: each a pure number or a conversion.</summary>
    internal ImmutableArray<double> Factors { get; private set; } = ImmutableArray<double>.Empty;

    /// <summary>Whether an unknown pure number or conversion has been multiplied in.</summary>
    internal bool Blurred { get; private set; }

    internal Evidence Evidence { get; private set; } = Evidence.Typed;

    internal ImmutableArray<Origin> Origins { get; private set; } = ImmutableArray<Origin>.Empty;

    /// <summary>Whether the unit is that of a product or quotient of values with units.</summary>
    internal bool IsComputed { get; private set; }

    /// <summary>The frame, point and sign convention of the components, where known.</summary>
    internal Context Context { get; private set; } = Context.None;

    /// <summary>A bare number: neutral in a sum; NaN where its value is not known.</summary>
    internal double? Number { get; private set; }

    /// <summary>Whether the bare number was read from a variable, which may stand for anything.</summary>
    internal bool IsVariable { get; private set; }

    internal ImmutableArray<Inferred> Elements { get; private set; } = ImmutableArray<Inferred>.Empty;

    /// <summary>What calling the value gives, where it is a delegate made from a known lambda or method.</summary>
    internal Summary? Callable { get; private set; }

    /// <summary>What an object holds that cannot change: of a record, of an anonymous type, what a constructor keeps.</summary>
    internal ImmutableDictionary<ISymbol, Inferred> Members { get; private set; } = _noMembers;

    /// <summary>
    /// The values of the arms of a conditional expression, where they are in different units: each meets what the expression
    /// meets. A variable forgets them, for what it meets later may hang on the same condition.
    /// </summary>
    internal ImmutableArray<Inferred> Alternatives { get; private set; } = ImmutableArray<Inferred>.Empty;

    internal bool HasUnit => Unit is not null;

    internal bool IsConcrete => Unit is not null && Parameters.IsEmpty;

    private bool IsPure => Unit is { IsPureNumber: true } && Parameters.IsEmpty;

    internal bool IsNumber => Number is not null;

    /// <summary>Whether it is more than a number, so that no power of a parameter can stand for it.</summary>
    internal bool IsStructured => !Elements.IsEmpty || Callable is not null || !Members.IsEmpty;

    internal bool IsUnknown => Unit is null && Number is null && Context.IsNone && !IsStructured && Alternatives.IsEmpty;

    internal static Inferred In(Unit? unit, Evidence evidence, Origin origin, Context? context = null) => new()
    {
        Unit = unit,
        Evidence = evidence,
        Origins = ImmutableArray.Create(origin),
        Context = context ?? Context.None,
    };

    internal static Inferred Of(IParameterSymbol parameter) => new()
    {
        Unit = Unit.One,
        Parameters = ImmutableArray.Create(new KeyValuePair<IParameterSymbol, int>(parameter, Dimension.Whole)),
    };

    internal static Inferred Bare(double value) => new() { Number = value };

    internal static Inferred Tuple(ImmutableArray<Inferred> elements) => new() { Elements = elements.Select(e => e.Kept()).ToImmutableArray() };

    internal static Inferred Delegate(Summary summary) => new() { Callable = summary };

    internal Inferred WithMember(ISymbol member, Inferred value)
    {
        if (!value.HasUnit && !value.IsStructured)
        {
            return this;
        }

        Inferred copy = Copy();
        copy.Members = Members.SetItem(member, value.FromVariable(false));
        return copy;
    }

    /// <summary>As kept in a variable.</summary>
    internal Inferred Kept() => Alternatives.IsEmpty ? this : OnlyContext();

    /// <summary>Only the frame, point and sign: what is left when a quantity type takes the unit over.</summary>
    internal Inferred OnlyContext() => Context.IsNone ? Unknown : new Inferred { Context = Context, Origins = Origins };

    internal Inferred WithContext(Context context, Origin origin)
    {
        Inferred copy = Copy();
        copy.Context = context.Or(Context);
        copy.Origins = Join(Origins, ImmutableArray.Create(origin));
        return copy;
    }

    /// <summary>With the context of a sum.</summary>
    internal Inferred WithContextOf(Inferred left, Inferred right)
    {
        // A literal has no axes and is about no point: it leaves both as they are.
        Context context = left.IsNumber ? right.Context : right.IsNumber ? left.Context : Context.OfSum(left.Context, right.Context);
        if (context.Equals(Context))
        {
            return this;
        }

        Inferred copy = Copy();
        copy.Context = context;
        return copy;
    }

    internal Inferred WithoutFactors()
    {
        if (Factors.IsEmpty && !Blurred)
        {
            return this;
        }

        Inferred copy = Copy();
        copy.Factors = ImmutableArray<double>.Empty;
        copy.Blurred = false;
        return copy;
    }

    /// <summary>As read from a variable.</summary>
    internal Inferred FromVariable(bool counts)
    {
        if (Number is null || IsVariable)
        {
            return Kept();
        }

        Inferred copy = Copy();
        copy.IsVariable = !counts;
        copy.Number = counts ? double.NaN : Number;
        return copy;
    }

    internal Inferred Negated()
    {
        if (Number is null && Context.Sign is null)
        {
            return this;
        }

        // A product of inertia of the other sign is one by the other convention, or a mistake: either way not known.
        Inferred copy = Copy();
        copy.Number = -Number;
        copy.Context = new Context(Context.Frame, Context.Point);
        return copy;
    }

    internal Inferred Times(Inferred other) => Multiply(other, Dimension.Whole);

    internal Inferred Over(Inferred other) => Multiply(other, -Dimension.Whole);

    /// <summary>To a power in sixths.</summary>
    internal Inferred Power(int sixths)
    {
        if (sixths == Dimension.Whole)
        {
            return this;
        }

        double power = sixths / (double)Dimension.Whole;
        if (Number is { } number)
        {
            return Bare(Math.Pow(number, power));
        }

        if (Unit is null || Unit.IsTemperaturePoint || Unit.Power(sixths) is not { } unit)
        {
            return Unknown;
        }

        ImmutableArray<KeyValuePair<IParameterSymbol, int>>.Builder parameters = ImmutableArray.CreateBuilder<KeyValuePair<IParameterSymbol, int>>(Parameters.Length);
        foreach (KeyValuePair<IParameterSymbol, int> parameter in Parameters)
        {
            if (Dimension.Raise(parameter.Value, sixths) is not { } raised)
            {
                return Unknown;
            }

            parameters.Add(new(parameter.Key, raised));
        }

        Inferred copy = Copy();
        copy.Unit = unit;
        copy.Parameters = parameters.MoveToImmutable();
        copy.Factors = Factors.Select(f => Math.Pow(Math.Abs(f), power)).ToImmutableArray();
        copy.IsComputed = true;
        copy.Context = Context.None;
        return copy;
    }

    /// <summary>The value on either of two paths.</summary>
    internal static Inferred Join(Inferred left, Inferred right)
    {
        if (ReferenceEquals(left, right))
        {
            return left;
        }

        if (left.IsNumber || right.IsNumber)
        {
            return !left.IsNumber ? left.HasUnit ? left : Unknown
                : !right.IsNumber ? right.HasUnit ? right : Unknown
                : left.Number.Equals(right.Number) && left.IsVariable == right.IsVariable ? left
                : new Inferred { Number = double.NaN, IsVariable = left.IsVariable || right.IsVariable };
        }

        if (!left.Elements.IsEmpty && left.Elements.Length == right.Elements.Length)
        {
            return Tuple(left.Elements.Zip(right.Elements, Join).ToImmutableArray());
        }

        if (!left.Members.IsEmpty && !right.Members.IsEmpty)
        {
            Inferred both = new();
            foreach (KeyValuePair<ISymbol, Inferred> member in left.Members)
            {
                both = right.Members.TryGetValue(member.Key, out Inferred? other) ? both.WithMember(member.Key, Join(member.Value, other)) : both;
            }

            return both;
        }

        Context context = left.Context.Meet(right.Context);
        if (left.Unit is null || right.Unit is null || !left.Unit.Equals(right.Unit) || !SameParameters(left, right))
        {
            return context.IsNone ? Unknown : new Inferred { Context = context, Origins = Join(left.Origins, right.Origins) };
        }

        ImmutableArray<double>? factors = Either(left.Factors, right.Factors);
        if (factors == left.Factors && left.Blurred == right.Blurred && context.Equals(left.Context) && left.Evidence == right.Evidence && left.IsComputed == right.IsComputed
            && left.Origins.SequenceEqual(right.Origins))
        {
            return left;
        }

        Inferred copy = left.Copy();
        copy.Factors = factors ?? ImmutableArray<double>.Empty;
        copy.Blurred = factors is null || left.Blurred || right.Blurred;
        copy.Context = context;
        copy.Evidence = Weaker(left, right);
        copy.IsComputed = left.IsComputed || right.IsComputed;
        copy.Origins = Join(left.Origins, right.Origins);
        return copy;
    }

    /// <summary>The value of a conditional expression, one of whose arms gives <paramref name="left"/> and another <paramref name="right"/>.</summary>
    internal static Inferred Either(Inferred left, Inferred right)
    {
        Inferred joined = Join(left, right);
        if (joined.HasUnit || joined.IsNumber || ReferenceEquals(joined, left))
        {
            return joined;
        }

        ImmutableArray<Inferred> arms = left.Arms();
        foreach (Inferred arm in right.Arms())
        {
            arms = arms.Length >= MostAlternatives || arms.Any(arm.SameAs) ? arms : arms.Add(arm);
        }

        if (arms.IsEmpty)
        {
            return joined;
        }

        Inferred copy = joined.Copy();
        copy.Alternatives = arms;
        return copy;
    }

    private ImmutableArray<Inferred> Arms() => IsConcrete ? ImmutableArray.Create(this) : Alternatives;

    /// <summary>Whether two values are known to be the same thing: where a loop has come to rest.</summary>
    internal bool SameAs(Inferred other) =>
        ReferenceEquals(this, other)
        || (Equals(Unit, other.Unit) && Nullable.Equals(Number, other.Number) && IsVariable == other.IsVariable && Blurred == other.Blurred
            && Evidence == other.Evidence && SameParameters(this, other) && Factors.SequenceEqual(other.Factors) && Context.Equals(other.Context)
            && Origins.SequenceEqual(other.Origins) && ReferenceEquals(Callable, other.Callable)
            && Members.Count == other.Members.Count && Members.All(m => other.Members.TryGetValue(m.Key, out Inferred? theirs) && m.Value.SameAs(theirs))
            && Alternatives.Length == other.Alternatives.Length && Alternatives.Zip(other.Alternatives, (a, b) => a.SameAs(b)).All(same => same)
            && Elements.Length == other.Elements.Length && Elements.Zip(other.Elements, (a, b) => a.SameAs(b)).All(same => same));

    /// <summary>The value with parameters replaced by what the caller passed.</summary>
    internal Inferred With(IReadOnlyDictionary<IParameterSymbol, Inferred> arguments)
    {
        if (!Elements.IsEmpty)
        {
            return Tuple(Elements.Select(e => e.With(arguments)).ToImmutableArray());
        }

        if (!Members.IsEmpty)
        {
            return Members.Aggregate(Unknown, (all, member) => all.WithMember(member.Key, member.Value.With(arguments)));
        }

        if (Parameters.IsEmpty)
        {
            return this;
        }

        Inferred result = Copy();
        result.Parameters = ImmutableArray<KeyValuePair<IParameterSymbol, int>>.Empty;
        bool single = Parameters.Length == 1 && Parameters[0].Value == Dimension.Whole && Unit!.IsPureNumber && Factors.IsEmpty && !Blurred;
        if (result.Unit!.IsPureNumber && result.Origins.IsEmpty)
        {
            result.IsComputed = false;
        }

        foreach (KeyValuePair<IParameterSymbol, int> parameter in Parameters)
        {
            if (!arguments.TryGetValue(parameter.Key, out Inferred argument))
            {
                result = result.Times(Of(parameter.Key).Power(parameter.Value));
                continue;
            }

            if (single)
            {
                return argument;
            }

            // Nothing times anything is nothing, which is neutral in whatever sum it stands.
            if (argument is { Number: 0, IsVariable: false } && parameter.Value > 0)
            {
                return Bare(0);
            }

            // A literal argument is a pure number in a product; its value is no conversion that the callee could mean.
            result = argument.IsNumber && !argument.IsVariable ? result : result.Times(argument.Power(parameter.Value));
        }

        // Of literals alone comes a literal.
        return result.IsPure && result.Origins.IsEmpty ? Bare(double.NaN) : result;
    }

    internal static Evidence Weaker(Inferred left, Inferred right) => left.Evidence < right.Evidence ? left.Evidence : right.Evidence;

    internal static bool SameParameters(Inferred left, Inferred right) =>
        left.Parameters.Length == right.Parameters.Length
        && left.Parameters.All(p => right.Parameters.Any(q => q.Value == p.Value && SymbolEqualityComparer.Default.Equals(q.Key, p.Key)));

    private Inferred Multiply(Inferred other, int sixths)
    {
        if (Number is { } left && other.Number is { } right)
        {
            // Literals stay apart as factors only beside a unit; two of them fold.
            return new Inferred { Number = sixths > 0 ? left * right : left / right, IsVariable = IsVariable || other.IsVariable };
        }

        if (other.Number is { } number)
        {
            return Scaled(number, other.IsVariable, sixths);
        }

        if (Number is not null)
        {
            return sixths > 0 ? other.Scaled(Number.Value, IsVariable, sixths) : other.Power(-Dimension.Whole).Scaled(Number.Value, IsVariable, Dimension.Whole);
        }

        if (Unit is null || other.Unit is null || Unit.IsTemperaturePoint || other.Unit.IsTemperaturePoint
            || Factors.Length + other.Factors.Length > MostFactors)
        {
            return Unknown;
        }

        return new Inferred
        {
            Unit = sixths > 0 ? Unit.Times(other.Unit) : Unit.Over(other.Unit),
            Parameters = other.Parameters.IsEmpty ? Parameters : Powers(other, sixths),
            Factors = other.Factors.IsEmpty ? Factors : Factors.AddRange(sixths > 0 ? other.Factors : other.Factors.Select(f => 1 / f)),
            Blurred = Blurred || other.Blurred,
            Evidence = Weaker(this, other),
            Origins = Join(Origins, other.Origins),
            IsComputed = IsPure ? other.IsComputed : other.IsPure ? IsComputed : true,
        };
    }

    private ImmutableArray<KeyValuePair<IParameterSymbol, int>> Powers(Inferred other, int sixths)
    {
        List<KeyValuePair<IParameterSymbol, int>> parameters = [.. Parameters];
        foreach (KeyValuePair<IParameterSymbol, int> parameter in other.Parameters)
        {
            int power = sixths > 0 ? parameter.Value : -parameter.Value;
            int at = parameters.FindIndex(p => SymbolEqualityComparer.Default.Equals(p.Key, parameter.Key));
            if (at >= 0)
            {
                power += parameters[at].Value;
                parameters.RemoveAt(at);
            }

            if (power != 0)
            {
                parameters.Add(new(parameter.Key, power));
            }
        }

        return parameters.ToImmutableArray();
    }

    private Inferred Scaled(double factor, bool isVariable, int sixths)
    {
        if (Unit is null || Unit.IsTemperaturePoint)
        {
            // A frame survives scaling; a temperature with an offset does not.
            return Unit is null && !Context.IsNone ? this : Unknown;
        }

        if (isVariable && !Literals.IsConversion(factor))
        {
            return Unknown;
        }

        if (factor is 1 or -1)
        {
            return this;
        }

        Inferred copy = Copy();
        if (double.IsNaN(factor) || factor == 0 || Factors.Length >= MostFactors)
        {
            copy.Blurred = true;
        }
        else
        {
            copy.Factors = Factors.Add(sixths > 0 ? factor : 1 / factor);
        }

        return copy;
    }

    // The factors of either path, where they differ by pure numbers only; null where a conversion may be on one path alone.
    private static ImmutableArray<double>? Either(ImmutableArray<double> left, ImmutableArray<double> right)
    {
        if (left.SequenceEqual(right))
        {
            return left;
        }

        List<double> onlyRight = [.. right];
        List<double> onlyLeft = [];
        foreach (double factor in left)
        {
            if (!onlyRight.Remove(factor))
            {
                onlyLeft.Add(factor);
            }
        }

        return left.Length + onlyRight.Count <= MostFactors && onlyLeft.Concat(onlyRight).All(Literals.IsPure) ? left.AddRange(onlyRight) : null;
    }

    private Inferred Copy() => (Inferred)MemberwiseClone();

    private static ImmutableArray<Origin> Join(ImmutableArray<Origin> left, ImmutableArray<Origin> right)
    {
        if (left.IsEmpty || right.IsEmpty)
        {
            return left.IsEmpty ? right : left;
        }

        ImmutableArray<Origin> joined = left;
        foreach (Origin origin in right)
        {
            if (joined.Length >= MostOrigins)
            {
                break;
            }

            if (!joined.Contains(origin))
            {
                joined = joined.Add(origin);
            }
        }

        return joined;
    }
}
