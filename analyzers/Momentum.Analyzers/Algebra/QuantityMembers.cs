using System.Collections.Concurrent;

namespace Momentum.Analyzers.Algebra;

/// <summary>
/// The unit of a member of a quantity type: <c>Torque.NewtonMeters</c>, <c>RotationalSpeed.FromRevolutionsPerMinute</c>,
/// <c>ForceUnit.PoundForce</c>. The name says the unit; the type says the kind, and what of angle the name leaves out.
/// </summary>
internal static class QuantityMembers
{
    // Members whose name is no product of unit words.
    private static readonly Dictionary<string, string> _irregular = new(StringComparer.Ordinal)
    {
        ["Energy.FootPound"] = "ft*lbf",
        ["Energy.FootPounds"] = "ft*lbf",
        ["Frequency.PerSecond"] = "Hz",
        ["Force.KiloPond"] = "kgf",
        ["Force.KiloPonds"] = "kgf",
    };

    private static readonly ConcurrentDictionary<(string Quantity, string Member), Unit?> _known = new();

    /// <summary>The unit, or null where the name spells none.</summary>
    /// <param name="quantity">The quantity type's name, such as <c>Torque</c>.</param>
    /// <param name="member">The unit in words, singular or plural.</param>
    internal static Unit? Read(string quantity, string member) => _known.GetOrAdd((quantity, member), static key => Find(key.Quantity, key.Member));

    private static Unit? Find(string quantity, string member)
    {
        if (_irregular.TryGetValue($"{quantity}.{member}", out string? text))
        {
            return Typed(quantity, member, UnitText.Read(text)!);
        }

        // A temperature scale named after Newton, not a degree newton; a pound mole is one unit; a ratio in decibels none.
        if (member is "DegreesNewton" or "DegreeNewton" || member.Contains("oundMole") || quantity is "Level" or "AmplitudeRatio" or "PowerRatio" or "FuelEfficiency" or "Information" or "BitRate")
        {
            return MemberTable.Read(quantity, member);
        }

        return UnitWords.Read(member) is { } unit ? Typed(quantity, member, unit) : MemberTable.Read(quantity, member);
    }

    private static Unit Typed(string quantity, string member, Unit unit)
    {
        Dimension dimension = unit.Dimension;
        switch (quantity)
        {
            case "Torque":
                return unit.As(dimension.WithAngle(-1), Kind.Torque);
            case "TorquePerLength":
                return unit.As(dimension.WithAngle(-1), Kind.Unspecified);
            case "MassMomentOfInertia":
            case "MomentOfInertia":
                return unit.As(dimension.WithAngle(-2), Kind.Unspecified);
            case "AngularMomentum":
                return unit.As(dimension.WithAngle(-1), Kind.Unspecified);
            case "RotationalStiffness":
            case "RotationalStiffnessPerLength":
                return unit.As(dimension.WithAngle(-2), Kind.Unspecified);
            case "Energy":
                return unit.As(dimension, Kind.Energy);
            case "TemperatureDelta":
                return unit.As(dimension, Kind.TemperatureDifference).Named(member.EndsWith("Celsius", StringComparison.Ordinal) ? "Δ°C" : member.EndsWith("Fahrenheit", StringComparison.Ordinal) ? "Δ°F" : unit.Symbol);
            case "Temperature" when member.EndsWith("Celsius", StringComparison.Ordinal):
                return unit.As(dimension, Kind.CelsiusPoint).Named("°C");
            case "Temperature" when member.EndsWith("Fahrenheit", StringComparison.Ordinal):
                return unit.As(dimension, Kind.FahrenheitPoint).Named("°F");
            case "Temperature" when unit.Dimension.Equals(Dimension.Of(temperature: 1)):
                return unit.As(dimension, Kind.AbsoluteTemperature);
            default:
                return unit;
        }
    }
}
