using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>What a report tells to write instead.</summary>
internal static class Remedies
{
    internal static string Of(DiagnosticDescriptor descriptor, Meeting meeting, ImmutableDictionary<string, string?> properties)
    {
        if (descriptor.Id == Descriptors.Frames.Id)
        {
            return "turn it into those axes by a Rotation first";
        }

        if (descriptor.Id == Descriptors.Points.Id)
        {
            return "move it to that point by the parallel-axis theorem first ('InertiaAbout')";
        }

        if (descriptor.Id == Descriptors.Signs.Id)
        {
            return "change the sign of the products";
        }

        if (properties.TryGetValue(Conversions.QuantityKey, out string? quantity))
        {
            string from = properties[Conversions.FromKey]!;
            string to = properties[Conversions.ToKey]!;
            string convert = $"'{quantity}.From{from}({Number(meeting)}).{to}'";
            return meeting.Weaker != Evidence.Typed ? $"write {convert}, or rename what is misnamed"
                : IsReading(meeting, from) ? $"read '{to}'"
                : meeting.Target is IMethodSymbol { IsStatic: true } factory && factory.Name == "From" + to ? $"build it with 'From{from}'"
                : $"write {convert}";
        }

        return meeting.Weaker != Evidence.Typed ? "convert it, or rename what is misnamed"
            : meeting.Actual.IsComputed ? "check the formula: read its factors in units that give the expected one"
            : "the two are different quantities: check which is meant";
    }

    // The member that the place itself reads.
    private static bool IsReading(Meeting meeting, string from) =>
        meeting.Site is MemberAccessExpressionSyntax access && access.Name.Identifier.ValueText == from;

    private static string Number(Meeting meeting) => MeetingRules.Text(meeting.Site);
}
