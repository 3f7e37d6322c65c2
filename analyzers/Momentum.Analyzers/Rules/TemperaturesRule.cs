using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>A temperature on a scale with an offset where a difference, or another scale, is meant.</summary>
internal sealed class TemperaturesRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.Temperatures;

    public bool Judges(Meeting meeting) => meeting.Actual.Unit!.Kind != meeting.Expected.Unit!.Kind && (meeting.Actual.Unit.IsTemperature || meeting.Expected.Unit.IsTemperature);
}
