using Momentum.Tool.Cases;
using Momentum.Tool.Cases.Keys;
using UnitsNet;

namespace Momentum.Tool.Answers;

/// <summary>Makes the body of a case and judges whether it can exist, and whether it goes with the hub.</summary>
internal static class BodyJudge
{
    // A radius of gyration k beyond these multiples of the hub radius is no vehicle but a slip of units.
    private const double LargestGyration = 20;
    private const double SmallestGyration = 1.0 / 20;

    /// <summary>The body; null if it was found wanting, with the reason among the findings.</summary>
    public static Body? Judge(Case given, Findings findings)
    {
        VehicleSection vehicle = given.Vehicle;
        if (given.Part.Count > 0 || vehicle.Inertia is null || vehicle.Mass is null)
        {
            findings.Error(vehicle, null, "a body of [[part]] tables cannot be computed yet", "a stated mass and inertia", "State mass and inertia in [vehicle].");
            return null;
        }

        MassMomentOfInertia spinInertia = (vehicle.SpinAxis switch
        {
            Axis.X => vehicle.Inertia.Xx,
            Axis.Y => vehicle.Inertia.Yy,
            _ => vehicle.Inertia.Zz,
        })!.Value;
        var body = new Body(vehicle.Mass.Value, spinInertia);
        JudgeHub(given, body, findings);
        return body;
    }

    private static void JudgeHub(Case given, Body body, Findings findings)
    {
        double radius = given.Despin.HubRadius.Value.Meters;
        double gyration = Math.Sqrt(body.SpinInertia.KilogramSquareMeters / body.Mass.Kilograms);
        double ratio = gyration / radius;
        string found = Invariant($"the body's radius of gyration about the spin axis is {gyration:G4} m, {ratio:G3} times the hub radius");
        if (ratio is > LargestGyration or < SmallestGyration)
        {
            findings.Error(
                given.Despin, nameof(DespinSection.HubRadius), $"it contradicts mass and inertia: {found}, and no vehicle is built so",
                Invariant($"{gyration / LargestGyration:G3} m to {gyration / SmallestGyration:G3} m for this mass and inertia"), "Check the units of hub radius, mass and inertia.");
        }
        else if (ratio > 1)
        {
            findings.Warn(
                given.Despin, nameof(DespinSection.HubRadius), $"{found}: mass must lie outside the hub",
                "Check the units of hub radius, mass and inertia; with wings, booms or tanks outside the hub it may be right, and then see that cords and weights clear them.");
        }
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
