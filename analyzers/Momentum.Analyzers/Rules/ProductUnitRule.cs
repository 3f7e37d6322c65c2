using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>A computed unit that is not the one the place expects.</summary>
internal sealed class ProductUnitRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.ProductUnit;

    public bool Judges(Meeting meeting) => meeting.Role is Role.Assign or Role.Return or Role.Argument && meeting.Actual.IsComputed;
}
