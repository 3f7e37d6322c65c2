using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Degrees, revolutions or no angle at all where a function takes radians; or the other way.</summary>
internal sealed class AngleUnitRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.AngleUnit;

    public bool Judges(Meeting meeting) => meeting.Role == Role.AngleArgument;
}
