using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>One kind of mistake that a single expression can be.</summary>
internal interface IObservationRule
{
    /// <summary>What is reported.</summary>
    DiagnosticDescriptor Descriptor { get; }

    /// <summary>What is wrong with the expression; null where nothing.</summary>
    Diagnostic? Judge(Observation observation, Conversions conversions);
}
