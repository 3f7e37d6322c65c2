using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>Finds the quantity type that can convert one unit to another, for the fixes.</summary>
internal sealed class Conversions(Compilation compilation)
{
    internal const string RoleKey = "Role";
    internal const string QuantityKey = "Quantity";
    internal const string FromKey = "From";
    internal const string ToKey = "To";
    internal const string RatioKey = "Ratio";
    internal const string CoherentKey = "Coherent";

    private static readonly ImmutableArray<string> _quantities = ImmutableArray.Create(
        "Length", "Mass", "Duration", "Angle", "RotationalSpeed", "Speed", "Acceleration", "RotationalAcceleration", "Force", "Torque", "Energy", "Power", "Pressure",
        "Impulse", "MassMomentOfInertia", "Area", "Volume", "Frequency", "LinearDensity", "Density", "ForcePerLength", "RotationalStiffness", "MassFlow", "VolumeFlow", "Temperature", "TemperatureDelta");

    private readonly ConcurrentDictionary<string, ImmutableArray<KeyValuePair<string, Unit>>> _members = new();

    /// <summary>
    /// Whether a place is in the compilation: a report may name no other. A project that references another as a compilation
    /// sees declarations in the source of that one.
    /// </summary>
    internal bool Knows(Location place) => place.SourceTree is { } tree && compilation.ContainsSyntaxTree(tree);

    /// <summary>For the fixes: the ratio of the two units, and the quantity and the two members that convert, where there are such.</summary>
    internal ImmutableDictionary<string, string?> Between(Unit from, Unit to)
    {
        UnitMatch match = UnitMatch.Between(from, to);
        ImmutableDictionary<string, string?> properties = match is { DimensionsAgree: true, KindsAgree: true }
            ? ImmutableDictionary<string, string?>.Empty
                .Add(RatioKey, match.Ratio.Value.ToString("R", CultureInfo.InvariantCulture))
                .Add(CoherentKey, to.Scale.Equals(Scale.One) ? "true" : "false")
            : ImmutableDictionary<string, string?>.Empty;
        foreach (string quantity in _quantities)
        {
            ImmutableArray<KeyValuePair<string, Unit>> members = Members(quantity);
            if (Find(members, from) is { } source && Find(members, to) is { } target)
            {
                return properties.Add(QuantityKey, quantity).Add(FromKey, source).Add(ToKey, target);
            }
        }

        return properties;
    }

    /// <summary>The member of a quantity whose number is <paramref name="ratio"/> times that of <paramref name="from"/>.</summary>
    internal (string Member, Unit Unit)? Scaled(string quantity, Unit from, double ratio)
    {
        foreach (KeyValuePair<string, Unit> member in Members(quantity))
        {
            UnitMatch match = UnitMatch.Between(from, member.Value);
            if (match is { DimensionsAgree: true, KindsAgree: true } && !match.Ratio.Equals(Scale.One) && Literals.Near(ratio, match.Ratio.Value))
            {
                return (member.Key, member.Value);
            }
        }

        return null;
    }

    private static string? Find(ImmutableArray<KeyValuePair<string, Unit>> members, Unit unit)
    {
        foreach (KeyValuePair<string, Unit> member in members)
        {
            if (member.Value.Scale.Equals(unit.Scale)
                && member.Value.Dimension.WithoutAngle.Equals(unit.Dimension.WithoutAngle)
                && member.Value.Dimension.Cycle == unit.Dimension.Cycle
                && UnitMatch.Between(unit, member.Value).Agree)
            {
                return member.Key;
            }
        }

        return null;
    }

    private ImmutableArray<KeyValuePair<string, Unit>> Members(string quantity) => _members.GetOrAdd(quantity, name =>
        compilation.GetTypeByMetadataName($"UnitsNet.{name}") is { } type
            ? type.GetMembers().OfType<IPropertySymbol>()
                .Where(p => !p.IsStatic && Types.IsNumeric(p.Type))
                .Select(p => new KeyValuePair<string, Unit?>(p.Name, QuantityMembers.Read(name, p.Name)))
                .Where(p => p.Value is not null)
                .Select(p => new KeyValuePair<string, Unit>(p.Key, p.Value!))
                .ToImmutableArray()
            : ImmutableArray<KeyValuePair<string, Unit>>.Empty);
}
