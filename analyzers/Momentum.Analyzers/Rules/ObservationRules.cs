using System.Collections.Immutable;

namespace Momentum.Analyzers.Rules;

/// <summary>The rules on single expressions.</summary>
internal static class ObservationRules
{
    internal static ImmutableArray<IObservationRule> All { get; } = ImmutableArray.Create<IObservationRule>(
        new ConversionByHandRule(),
        new ResultUnusedRule(),
        new EqualityRule());
}
