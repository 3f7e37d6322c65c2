using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Components along the axes of two frames in one sum, comparison or place.</summary>
internal sealed class FramesRule : IContextRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.Frames;

    public (string Actual, string Expected)? Difference(Context actual, Context expected) =>
        Context.Differ(actual.Frame, expected.Frame) ? (actual.Frame!, expected.Frame!) : null;
}
