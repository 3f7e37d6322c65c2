using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Products of inertia by both sign conventions in one sum, comparison or place.</summary>
internal sealed class SignsRule : IContextRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.Signs;

    public (string Actual, string Expected)? Difference(Context actual, Context expected) =>
        Context.Differ(actual.Sign, expected.Sign) ? (actual.Sign!, expected.Sign!) : null;
}
