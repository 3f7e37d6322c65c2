using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>
/// A unit is read from a name that may mean something else, or two plain names disagree where the operation can be right:
/// too often a false alarm to be on by default.
/// </summary>
internal sealed class GuessedNameRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.GuessedName;

    public bool Judges(Meeting meeting) => meeting.Weaker == Evidence.Guessed || (meeting.Weaker == Evidence.Named && !CannotBeRight(meeting));

    // One dimension in two sizes. Two dimensions are as often a name misread as a mistake.
    private static bool CannotBeRight(Meeting meeting)
    {
        Algebra.Dimension actual = meeting.Actual.Unit!.Dimension;
        Algebra.Dimension expected = meeting.Expected.Unit!.Dimension;
        return actual.WithoutAngle.Equals(expected.WithoutAngle) && (!actual.WithoutAngle.IsNone || actual.Angle == expected.Angle);
    }
}
