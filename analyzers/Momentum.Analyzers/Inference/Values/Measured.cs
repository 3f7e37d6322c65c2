using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>A number whose unit is known, or the frame, point or sign convention that its components are in; or both.</summary>
internal sealed class Measured : Inferred
{
    // More factors than this in one product is no longer somebody converting a unit.
    private const int MostFactors = 8;
    private const int MostOrigins = 3;

    private static readonly ImmutableArray<KeyValuePair<IParameterSymbol, int>> _noParameters = ImmutableArray<KeyValuePair<IParameterSymbol, int>>.Empty;

    private Context _context = Context.None;

    private Measured()
    {
    }

    /// <summary>The unit, or null where only the context is known. Where <see cref="Parameters"/> is not empty, the known part of it.</summary>
    internal Unit? Unit { get; private set; }

    /// <summary>Powers, in sixths, of parameters whose unit the caller decides.</summary>
    internal ImmutableArray<KeyValuePair<IParameterSymbol, int>> Parameters { get; private set; } = _noParameters;

    /// <summary>The bare numbers that a value with a unit has been multiplied by: each a pure number or a conversion.</summary>
    internal ImmutableArray<double> Factors { get; private set; } = ImmutableArray<double>.Empty;

    /// <summary>Whether an unknown pure number or conversion has been multiplied in.</summary>
    internal bool Blurred { get; private set; }

    internal Evidence Evidence { get; private set; } = Evidence.Typed;

    internal ImmutableArray<Origin> From { get; private set; } = ImmutableArray<Origin>.Empty;

    /// <summary>Whether the unit is that of a product or quotient of values with units.</summary>
    internal bool IsComputed { get; private set; }

    internal override Context Context => _context;

    private bool IsPure => Unit is { IsPureNumber: true } && Parameters.IsEmpty;

    internal static new Measured In(Unit unit, Evidence evidence, Origin origin, Context? context) => new()
    {
        Unit = unit,
        Evidence = evidence,
        From = ImmutableArray.Create(origin),
        _context = context ?? Context.None,
    };

    internal static new Measured Of(IParameterSymbol parameter) => new()
    {
        Unit = Unit.One,
        Parameters = ImmutableArray.Create(new KeyValuePair<IParameterSymbol, int>(parameter, Dimension.Whole)),
    };

    /// <summary>A number of which only the context is known; nothing where that is none.</summary>
    internal static Inferred Within(Context context, ImmutableArray<Origin> left, ImmutableArray<Origin> right) =>
        context.IsNone ? Unknown : new Measured { _context = context, From = Join(left, right) };

    /// <summary>A number of which only the context is known.</summary>
    internal static Measured Within(Context context, Origin origin) => new() { _context = context, From = ImmutableArray.Create(origin) };

    internal static Evidence Weaker(Measured left, Measured right) => left.Evidence < right.Evidence ? left.Evidence : right.Evidence;

    internal override ImmutableArray<Origin> Origins() => From;

    internal Measured WithContext(Context context, Origin origin)
    {
        Measured copy = Copy();
        copy._context = context.Or(Context);
        copy.From = Join(From, ImmutableArray.Create(origin));
        return copy;
    }

    /// <summary>The same number in another unit, that of the expression it stands in.</summary>
    internal Measured In(Unit unit)
    {
        Measured copy = Copy();
        copy.Unit = unit;
        return copy;
    }

    internal override Inferred WithContextOf(Inferred left, Inferred right)
    {
        // A literal has no axes and is about no point: it leaves both as they are.
        Context context = left.IsNumber ? right.Context : right.IsNumber ? left.Context : Context.OfSum(left.Context, right.Context);
        if (context.Equals(Context))
        {
            return this;
        }

        Measured copy = Copy();
        copy._context = context;
        return copy;
    }

    internal override Inferred WithoutFactors()
    {
        if (Factors.IsEmpty && !Blurred)
        {
            return this;
        }

        Measured copy = Copy();
        copy.Factors = ImmutableArray<double>.Empty;
        copy.Blurred = false;
        return copy;
    }

    internal override Inferred Negated()
    {
        if (Context.Sign is null)
        {
            return this;
        }

        // A product of inertia of the other sign is one by the other convention, or a mistake: either way not known.
        Measured copy = Copy();
        copy._context = new Context(Context.Frame, Context.Point);
        return copy;
    }

    internal Inferred Times(Measured other, int sixths)
    {
        if (Unit is null || other.Unit is null || Unit.IsPoint || other.Unit.IsPoint
            || Factors.Length + other.Factors.Length > MostFactors)
        {
            return Unknown;
        }

        return new Measured
        {
            Unit = sixths > 0 ? Unit.Times(other.Unit) : Unit.Over(other.Unit),
            Parameters = other.Parameters.IsEmpty ? Parameters : Powers(other, sixths),
            Factors = other.Factors.IsEmpty ? Factors : Factors.AddRange(sixths > 0 ? other.Factors : other.Factors.Select(f => 1 / f)),
            Blurred = Blurred || other.Blurred,
            Evidence = Weaker(this, other),
            From = Join(From, other.From),
            IsComputed = IsPure ? other.IsComputed : other.IsPure ? IsComputed : true,
        };
    }

    /// <summary>Times, or divided by, a bare number.</summary>
    internal Inferred Scaled(BareNumber number, int sixths)
    {
        if (Unit is null || Unit.IsPoint)
        {
            // A frame survives scaling; a temperature with an offset does not.
            return Unit is null ? this : Unknown;
        }

        double factor = number.Value;
        if (number.IsVariable && !Literals.IsConversion(factor))
        {
            return Unknown;
        }

        if (factor is 1 or -1)
        {
            return this;
        }

        // 5.1 * DegToRad is an angle: the number beside a ratio has the unit that the ratio converts.
        if (Evidence != Evidence.Typed && Parameters.IsEmpty && Unit.IsRatioOfLike)
        {
            return Unknown;
        }

        Measured copy = Copy();
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

    internal Inferred Join(Measured other)
    {
        Context context = Context.Meet(other.Context);
        if (Unit is null || other.Unit is null || !Unit.Equals(other.Unit) || !SameParameters(other))
        {
            return Within(context, From, other.From);
        }

        ImmutableArray<double>? factors = Either(Factors, other.Factors);
        if (factors == Factors && Blurred == other.Blurred && context.Equals(Context) && Evidence == other.Evidence && IsComputed == other.IsComputed
            && From.SequenceEqual(other.From))
        {
            return this;
        }

        Measured copy = Copy();
        copy.Factors = factors ?? ImmutableArray<double>.Empty;
        copy.Blurred = factors is null || Blurred || other.Blurred;
        copy._context = context;
        copy.Evidence = Weaker(this, other);
        copy.IsComputed = IsComputed || other.IsComputed;
        copy.From = Join(From, other.From);
        return copy;
    }

    internal override Inferred With(IReadOnlyDictionary<IParameterSymbol, Inferred> arguments)
    {
        if (Parameters.IsEmpty)
        {
            return this;
        }

        bool single = Parameters.Length == 1 && Parameters[0].Value == Dimension.Whole && Unit!.IsPureNumber && Factors.IsEmpty && !Blurred;
        Measured known = Copy();
        known.Parameters = _noParameters;
        known.IsComputed &= !(Unit!.IsPureNumber && From.IsEmpty);
        Inferred result = known;
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
            if (argument is BareNumber { Value: 0, IsVariable: false } && parameter.Value > 0)
            {
                return Bare(0);
            }

            // A literal argument is a pure number in a product; its value is no conversion that the callee could mean.
            result = argument is BareNumber { IsVariable: false } ? result : result.Times(argument.Power(parameter.Value));
        }

        // Of literals alone comes a literal.
        return result is Measured { IsPure: true, From.IsEmpty: true } ? Bare(double.NaN) : result;
    }

    private protected override Inferred Raised(int sixths)
    {
        if (Unit is null || Unit.IsPoint || Unit.Power(sixths) is not { } unit)
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

        double power = sixths / (double)Dimension.Whole;
        Measured copy = Copy();
        copy.Unit = unit;
        copy.Parameters = parameters.MoveToImmutable();
        copy.Factors = ImmutableArray.CreateRange(Factors, f => Math.Pow(Math.Abs(f), power));
        copy.IsComputed = true;
        copy._context = Context.None;
        return copy;
    }

    private protected override bool Same(Inferred other) =>
        other is Measured measured && Equals(Unit, measured.Unit) && Blurred == measured.Blurred && Evidence == measured.Evidence
        && SameParameters(measured) && Factors.SequenceEqual(measured.Factors) && Context.Equals(measured.Context) && From.SequenceEqual(measured.From);

    private bool SameParameters(Measured other) => Parameters.Length == other.Parameters.Length
        && Parameters.All(p => other.Parameters.Any(q => q.Value == p.Value && SymbolEqualityComparer.Default.Equals(q.Key, p.Key)));

    private ImmutableArray<KeyValuePair<IParameterSymbol, int>> Powers(Measured other, int sixths)
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

    private Measured Copy() => (Measured)MemberwiseClone();

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
