using System.Collections.Immutable;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// The value of a conditional expression whose arms are in different units: each arm meets what the expression meets. A
/// variable forgets them at the next branch, for what it meets after that may hang on the same condition.
/// </summary>
internal sealed class Choice : Inferred
{
    private const int Most = 8;

    private readonly Inferred _joined;

    private Choice(Inferred joined, ImmutableArray<Measured> arms)
    {
        _joined = joined;
        Arms = arms;
    }

    internal ImmutableArray<Measured> Arms { get; }

    internal override Context Context => _joined.Context;

    /// <summary>The arms of two values, where they have any whose unit is known; else what is known of both.</summary>
    internal static Inferred Of(Inferred joined, Inferred left, Inferred right)
    {
        ImmutableArray<Measured> arms = ArmsOf(left);
        foreach (Measured arm in ArmsOf(right))
        {
            arms = arms.Length >= Most || arms.Any(arm.SameAs) ? arms : arms.Add(arm);
        }

        return arms.IsEmpty ? joined : new Choice(joined, arms);
    }

    /// <summary>What becomes of each arm.</summary>
    internal Inferred Each(Func<Measured, Inferred> change)
    {
        ImmutableArray<Measured> arms = Arms.Select(change).OfType<Measured>().Where(arm => arm.IsConcrete).ToImmutableArray();
        return arms.IsEmpty ? Unknown : new Choice(Unknown, arms);
    }

    internal override Inferred Negated() => Each(arm => arm.Negated());

    internal override Inferred Kept() => _joined;

    internal override Inferred FromVariable(bool counts) => this;

    internal override ImmutableArray<Origin> Origins() => _joined.Origins();

    private protected override Inferred Raised(int sixths) => Each(arm => arm.Power(sixths));

    private protected override bool Same(Inferred other) =>
        other is Choice choice && Arms.Length == choice.Arms.Length && Arms.Zip(choice.Arms, (a, b) => a.SameAs(b)).All(same => same);

    private static ImmutableArray<Measured> ArmsOf(Inferred value) => value switch
    {
        Measured { IsConcrete: true } arm => ImmutableArray.Create(arm),
        Choice choice => choice.Arms,
        _ => ImmutableArray<Measured>.Empty,
    };
}
