using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>A value stored in, or returned as, another unit than stated.</summary>
internal sealed class UnitAssignedRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.UnitAssigned;

    public bool Judges(Meeting meeting) => meeting.Role is Role.Assign or Role.Return;
}
