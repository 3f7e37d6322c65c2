using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>A value passed in another unit than the parameter takes.</summary>
internal sealed class UnitPassedRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.UnitPassed;

    public bool Judges(Meeting meeting) => meeting.Role == Role.Argument;
}
