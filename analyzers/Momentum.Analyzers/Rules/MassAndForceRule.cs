using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>A mass for its weight or the reverse, or one of the four pounds for another: lb, lbf, slug, kgf.</summary>
internal sealed class MassAndForceRule : IMeetingRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.MassAndForce;

    public bool Judges(Meeting meeting) => IsMass(meeting.Actual.Unit!) ? IsForce(meeting.Expected.Unit!) || (IsMass(meeting.Expected.Unit!) && Slug(meeting))
        : IsForce(meeting.Actual.Unit!) && (IsMass(meeting.Expected.Unit!) || (IsForce(meeting.Expected.Unit!) && KilogramForce(meeting)));

    private static bool IsMass(Unit unit) => unit.Dimension.Equals(Dimension.Of(mass: 1));

    private static bool IsForce(Unit unit) => unit.Dimension.Equals(Dimension.Of(mass: 1, length: 1, time: -2));

    private static bool Slug(Meeting meeting) => meeting.Actual.Unit!.Symbol == "slug" || meeting.Expected.Unit!.Symbol == "slug";

    private static bool KilogramForce(Meeting meeting) => meeting.Actual.Unit!.Symbol == "kgf" || meeting.Expected.Unit!.Symbol == "kgf";
}
