using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>One expression that a rule may find fault with by itself.</summary>
/// <param name="operation">The expression.</param>
/// <param name="value">What it gives; of a comparison, what is known of its better known operand.</param>
/// <param name="owner">The method or other member it stands in.</param>
internal sealed class Observation(IOperation operation, Inferred value, ISymbol owner)
{
    internal IOperation Operation { get; } = operation;

    internal Inferred Value { get; } = value;

    internal ISymbol Owner { get; } = owner;
}
