using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>A name states one unit; a type, an attribute or a contract states another.</summary>
internal sealed class NameContradictsRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.NameContradicts;

    public bool Judges(Meeting meeting) => meeting.Actual.Evidence != meeting.Expected.Evidence;
}
