using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Two units in one comparison.</summary>
internal sealed class UnitsComparedRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.UnitsCompared;

    public bool Judges(Meeting meeting) => meeting.Role == Role.Compare;
}
