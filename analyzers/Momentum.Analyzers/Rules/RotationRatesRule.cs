using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Revolutions, radians, degrees and cycles per time, or revolutions for another angle.</summary>
internal sealed class RotationRatesRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.RotationRates;

    public bool Judges(Meeting meeting) => IsTurning(meeting.Actual.Unit!) && IsTurning(meeting.Expected.Unit!)
        && (meeting.Actual.Unit!.Dimension.Time == meeting.Expected.Unit!.Dimension.Time)
        && (meeting.Actual.Unit.Dimension.Time != 0 || IsRevolution(meeting.Actual.Unit) || IsRevolution(meeting.Expected.Unit));

    private static bool IsTurning(Unit unit) =>
        unit.Dimension is { Mass: 0, Length: 0, Temperature: 0, Time: <= 0 } dimension && (dimension.Angle != 0 || dimension.Cycle != 0 || dimension.Time != 0);

    private static bool IsRevolution(Unit unit) => unit.Dimension.Angle != 0 && unit.Scale.Equals(Scale.Pi.Times(Scale.Integer(2)));
}
