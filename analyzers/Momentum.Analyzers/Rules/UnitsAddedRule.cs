using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Two units in one sum.</summary>
internal sealed class UnitsAddedRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.UnitsAdded;

    public bool Judges(Meeting meeting) => meeting.Role is Role.Sum or Role.Remainder;
}
