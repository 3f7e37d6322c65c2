using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using Momentum.Cases.Sections;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Makes the body of a case and judges whether it can exist, how it spins, and whether it goes with the hub.</summary>
internal static class BodyJudge
{
    // A radius of gyration k beyond these multiples of the hub radius is no vehicle but a slip of units.
    private const double LargestGyration = 20;
    private const double SmallestGyration = 1.0 / 20;

    // Above these the planar, symmetric picture is worth a second look; vehicles are balanced well below them.
    private const double NotableOffset = 0.01;
    private const double NotableTiltDegrees = 1;

    /// <summary>The body; null if it was found wanting, with the reason among the findings.</summary>
    public static SpinningBody? Judge(Case given, ICaseFiles? files, Findings findings)
    {
        SpinningBody? body = given.Part.Count > 0 ? PartsBody.Assemble(given, files, findings) : Stated(given, findings);
        if (body is null)
        {
            return null;
        }

        JudgeHub(given, body, findings);
        JudgeSpin(given, body, findings);
        JudgeBench(given, body, findings);
        return body;
    }

    /// <summary>Where the spin axis stands among the principal axes; null if only its own moment is known.</summary>
    public static SpinAxisRank? Rank(SpinningBody body)
    {
        if (body.Inertia is not { } inertia)
        {
            return null;
        }

        PrincipalAxes<Body> principal = inertia.PrincipalAxes();
        double spin = body.SpinInertia.KilogramSquareMeters;
        double least = principal.Smallest.KilogramSquareMeters;
        double largest = principal.Largest.KilogramSquareMeters;
        if (principal.SmallestTwoAreEqual && principal.LargestTwoAreEqual)
        {
            return SpinAxisRank.NoDifference;
        }

        double middle = principal.Intermediate.KilogramSquareMeters;
        double toLeast = Math.Abs(spin - least);
        double toMiddle = principal.SmallestTwoAreEqual || principal.LargestTwoAreEqual ? double.PositiveInfinity : Math.Abs(spin - middle);
        double toLargest = Math.Abs(spin - largest);
        return toLargest <= toMiddle && toLargest <= toLeast ? SpinAxisRank.Largest
            : toLeast <= toMiddle ? SpinAxisRank.Least
            : SpinAxisRank.Intermediate;
    }

    public static Direction<Body> DirectionOf(Axis axis) => axis switch
    {
        Axis.X => Direction<Body>.XAxis,
        Axis.Y => Direction<Body>.YAxis,
        _ => Direction<Body>.ZAxis,
    };

    /// <summary>What the stated products mean.</summary>
    public static Momentum.Inertia.ProductSign SignOf(VehicleSection vehicle) => vehicle.ProductSign == Sections.ProductSign.PositiveIntegral
        ? Momentum.Inertia.ProductSign.PositiveIntegral
        : Momentum.Inertia.ProductSign.TensorElement;

    /// <summary>A library's message as the middle of a sentence.</summary>
    public static string Clause(string message)
    {
        string trimmed = message.TrimEnd('.');
        return char.ToLowerInvariant(trimmed[0]) + trimmed[1..];
    }

    private static SpinningBody? Stated(Case given, Findings findings)
    {
        VehicleSection vehicle = given.Vehicle;
        InertiaSection stated = vehicle.Inertia!;
        Position<Body> centre = vehicle.Centre is [var x, var y, var z] ? Position<Body>.Of(x.Value, y.Value, z.Value) : Position<Body>.Origin;
        Mass mass = vehicle.Mass!.Value;
        Direction<Body> axis = DirectionOf(vehicle.SpinAxis);
        if (stated.Xx is null || stated.Yy is null || stated.Zz is null)
        {
            return OneMoment(given, mass, centre, axis, (stated.Xx ?? stated.Yy ?? stated.Zz)!.Value, findings);
        }

        Momentum.Inertia.ProductSign sign = SignOf(vehicle);
        try
        {
            InertiaTensor<Body> tensor = vehicle.InertiaAbout == InertiaReference.CentreOfMass
                ? InertiaTensor<Body>.Of(stated.Xx.Value, stated.Yy.Value, stated.Zz.Value, Product(stated.Xy), Product(stated.Xz), Product(stated.Yz), sign)
                : MassProperties<Body>.Of(mass, centre, PointInertia<Body>.Of(
                    Position<Body>.Origin, stated.Xx.Value, stated.Yy.Value, stated.Zz.Value, Product(stated.Xy), Product(stated.Xz), Product(stated.Yz), sign)).Inertia;
            return new SpinningBody(mass, centre, axis, tensor.AboutAxis(axis), tensor);
        }
        catch (ArgumentException refusal)
        {
            findings.Error(
                vehicle, nameof(VehicleSection.Inertia), Clause(refusal.Message),
                "moments and products that some distribution of mass has", "Check the values, their units, inertia_about and product_sign.");
            return null;
        }

        static MassMomentOfInertia Product(Stated<MassMomentOfInertia>? product) => product?.Value ?? MassMomentOfInertia.Zero;
    }

    /// <summary>Without the transverse moments the spin is known and nothing else: enough for the planar motion.</summary>
    private static SpinningBody? OneMoment(
        Case given, Mass mass, Position<Body> centre, Direction<Body> axis, MassMomentOfInertia moment, Findings findings)
    {
        VehicleSection vehicle = given.Vehicle;
        var body = new SpinningBody(mass, centre, axis, moment, null);
        if (vehicle.InertiaAbout == InertiaReference.Origin)
        {
            double aboutCentre = moment.KilogramSquareMeters - (mass.Kilograms * Math.Pow(body.CentreOffset.Meters, 2));
            if (!(aboutCentre > 0))
            {
                findings.Error(
                    vehicle, nameof(VehicleSection.Inertia), "moved from the origin to the centre of mass the moment is not positive: the body would have none",
                    "more than mass times the square of the centre's distance from the axis", "Check centre, mass and inertia_about.");
                return null;
            }

            body = body with { SpinInertia = MassMomentOfInertia.FromKilogramSquareMeters(aboutCentre) };
        }

        string idle = given.Despin.OnSprings ? "nutation, cord_plane_offset, deck_edge and second_weight_delay" : "nutation, cord_plane_offset, deck_edge, stiffness and damping";
        findings.Warn(
            vehicle, nameof(VehicleSection.Inertia), $"only the moment about the spin axis is stated, so that stability and nutation cannot be judged and nothing is computed in three dimensions: {idle} have no effect",
            "State the other two moments, and the products if they are known.");
        return body;
    }

    private static void JudgeHub(Case given, SpinningBody body, Findings findings)
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

        if (body.CentreOffset.Meters > NotableOffset * radius)
        {
            findings.Warn(
                given.Vehicle, nameof(VehicleSection.Centre), Invariant($"the centre of mass lies {body.CentreOffset.Millimeters:G3} mm off the spin axis through the origin, {100 * body.CentreOffset.Meters / radius:G3} % of the hub radius, and the design takes it on the axis"),
                "Balance the body, or expect it to be left wobbling and drifting.");
        }
    }

    private static void JudgeSpin(Case given, SpinningBody body, Findings findings)
    {
        if (Rank(body) is SpinAxisRank.Least)
        {
            findings.Warn(
                given.Vehicle, nameof(VehicleSection.SpinAxis), "it is the axis of least inertia: internal friction makes any nutation grow, and what transverse rate there is at release stays when the spin is gone, so that the body may be left tumbling",
                "Check how long it spins before release and what nutation it has then.");
        }
        else if (Rank(body) is SpinAxisRank.Intermediate)
        {
            findings.Warn(
                given.Vehicle, nameof(VehicleSection.SpinAxis), "it is the axis of intermediate inertia: spin about it is unstable, and the body turns over within a few turns",
                "Check the moments of inertia and spin_axis; spin about the axis of largest inertia, or of least for a short time.");
        }

        if (body.Balance?.PrincipalAxisTilt is { } tilt && tilt.Degrees > NotableTiltDegrees)
        {
            findings.Warn(
                given.Vehicle, nameof(VehicleSection.Inertia), Invariant($"the nearest principal axis is tilted {tilt.Degrees:G3} deg from the spin axis, so that the body cones as it spins, and the design takes it as spinning true"),
                "Balance the body, or check the products of inertia and product_sign.");
        }
    }

    private static void JudgeBench(Case given, SpinningBody body, Findings findings)
    {
        if (given.Bench is not { } bench)
        {
            return;
        }

        double above = WholeMotion.CordHeight(given, body).Meters;
        if (bench.CordHeight is { } height && height.Value.Meters <= above)
        {
            findings.Error(
                bench, nameof(BenchSection.CordHeight), Invariant($"the cord plane is {above:G4} m above the body origin, which would then be in the floor"),
                Invariant($"more than {above:G4} m"), "Check vehicle.centre and despin.cord_plane_offset, or measure the height again.");
        }

        if (given.Spin.Nutation is not null)
        {
            findings.Warn(given.Spin, nameof(SpinSection.Nutation), "on a rig the bearing holds the axis, and the wobble has no effect", "Remove it, or remove [bench].");
        }
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
