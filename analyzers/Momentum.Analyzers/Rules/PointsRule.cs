using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Inertia about two points in one sum, comparison or place.</summary>
internal sealed class PointsRule : IContextRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.Points;

    public (string Actual, string Expected)? Difference(Context actual, Context expected) =>
        Context.PointsDiffer(actual.Point, expected.Point) ? (actual.Point!, expected.Point!) : null;
}
