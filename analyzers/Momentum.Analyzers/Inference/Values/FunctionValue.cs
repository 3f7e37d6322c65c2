namespace Momentum.Analyzers.Inference;

/// <summary>A delegate made from a known lambda or method.</summary>
/// <param name="summary">What calling it does and gives.</param>
internal sealed class FunctionValue(Summary summary) : Inferred
{
    internal Summary Summary { get; } = summary;

    private protected override bool Same(Inferred other) => other is FunctionValue function && ReferenceEquals(Summary, function.Summary);
}
