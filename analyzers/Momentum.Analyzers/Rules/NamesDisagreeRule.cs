using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Both units are read from names.</summary>
internal sealed class NamesDisagreeRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.NamesDisagree;

    public bool Judges(Meeting meeting) => meeting.Weaker == Evidence.Named;
}
