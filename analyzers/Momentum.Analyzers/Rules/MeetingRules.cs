using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>The rules on meetings: the first that a meeting fits reports it, so the particular stand before the general.</summary>
internal static class MeetingRules
{
    private const int LongestText = 60;

    internal static ImmutableArray<IMeetingRule> All { get; } = ImmutableArray.Create<IMeetingRule>(
        new GuessedNameRule(),
        new NameContradictsRule(),
        new NamesDisagreeRule(),
        new AngleUnitRule(),
        new TemperaturesRule(),
        new TorqueAndEnergyRule(),
        new RotationRatesRule(),
        new MassAndForceRule(),
        new ProductUnitRule(),
        new UnitsAddedRule(),
        new UnitsComparedRule(),
        new UnitAssignedRule(),
        new UnitPassedRule());

    /// <summary>The rules on frames, points and signs: each that a meeting fits reports it.</summary>
    internal static ImmutableArray<IContextRule> Contexts { get; } = ImmutableArray.Create<IContextRule>(new FramesRule(), new PointsRule(), new SignsRule());

    /// <summary>What is wrong with a meeting: nothing, a unit, a frame, a point, a sign, or several.</summary>
    internal static IEnumerable<Diagnostic> Judge(Meeting meeting, Conversions conversions)
    {
        if (meeting.Agreement == Agreement.Disagree && All.FirstOrDefault(rule => rule.Judges(meeting)) is { } rule)
        {
            yield return Report(rule.Descriptor, meeting, meeting.Actual.Unit!.Symbol, meeting.Expected.Unit!.Symbol, conversions, conversions.Between(meeting.Actual.Unit, meeting.Expected.Unit));
        }

        if (meeting.Agreement == Agreement.ByHand && ConversionByHandRule.Judge(meeting, conversions) is { } conversion)
        {
            yield return conversion;
        }

        foreach (IContextRule contextRule in Contexts)
        {
            if (contextRule.Difference(meeting.Actual.Context, meeting.Expected.Context) is var (actual, expected))
            {
                yield return Report(contextRule.Descriptor, meeting, actual, expected, conversions, ImmutableDictionary<string, string?>.Empty);
            }
        }
    }

    private static Diagnostic Report(DiagnosticDescriptor descriptor, Meeting meeting, string actual, string expected, Conversions conversions, ImmutableDictionary<string, string?> properties)
    {
        IEnumerable<Location> places = meeting.Actual.From.Concat(meeting.Expected.From).Select(o => o.Location);
        if (meeting.Inside is { } inside)
        {
            places = places.Append(inside);
        }

        Location site = meeting.Site.GetLocation();
        return Diagnostic.Create(
            descriptor,
            site,
            places.Where(conversions.Knows).Distinct(),
            properties.SetItem(Conversions.RoleKey, meeting.Role.ToString()),
            Text(meeting.Site),
            actual,
            Place(meeting),
            expected,
            Remedies.Of(descriptor, meeting, properties));
    }

    private static string Place(Meeting meeting) => meeting.Role switch
    {
        Role.Sum => $"it is added to '{Text(meeting.Other ?? meeting.Site)}' in",
        Role.Product => $"in the product '{Text(meeting.Other ?? meeting.Site)}' it must be in",
        Role.Remainder => $"it divides '{Text(meeting.Other ?? meeting.Site)}' in",
        Role.Compare when meeting.Target is not null => $"'{Text(meeting.Other ?? meeting.Site)}' beside it in '{Name(meeting)}' is in",
        Role.Compare => $"it is compared with '{Text(meeting.Other ?? meeting.Site)}' in",
        Role.Return => $"'{Name(meeting)}' returns",
        Role.Assign => $"'{Name(meeting)}' is in",
        _ when meeting.Inside is not null => $"'{Name(meeting)}' is used as",
        _ => $"'{Name(meeting)}' takes",
    };

    private static string Name(Meeting meeting) => meeting.Target switch
    {
        null => string.Empty,
        IMethodSymbol { AssociatedSymbol: { } associated } => associated.Name,
        IMethodSymbol method when meeting.Role == Role.Return => method.Name,
        IMethodSymbol { MethodKind: MethodKind.Constructor } constructor => $"new {constructor.ContainingType.Name}",
        IMethodSymbol method => $"{method.ContainingType.Name}.{method.Name}",
        { } variable => variable.Name,
    };

    internal static string Text(SyntaxNode node)
    {
        string text = string.Join(" ", node.ToString().Split([' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= LongestText ? text : text.Substring(0, LongestText) + "…";
    }
}
