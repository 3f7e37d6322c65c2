using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>One dimension, two things: a moment of force is not work.</summary>
internal sealed class TorqueAndEnergyRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.TorqueAndEnergy;

    public bool Judges(Meeting meeting) => (meeting.Actual.Unit!.Kind, meeting.Expected.Unit!.Kind) is (Kind.Torque, Kind.Energy) or (Kind.Energy, Kind.Torque);
}
