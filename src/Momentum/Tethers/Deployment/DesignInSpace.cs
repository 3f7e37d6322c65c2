using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>The way from a sized planar design to its deployment in three dimensions.</summary>
internal static class DesignInSpace
{
    // How long it is followed, in let-go times of the planar motion: cords that let go late, and some of the flight after.
    private const double Followed = 1.5;

    // Straight pieces of a heavy cord.
    private const int Pieces = 4;

    // Relative: the design's spin inertia may have been rounded on the way through another unit.
    private const double SameInertia = 1e-6;

    internal static CordDeployment Of(
        PlanarDesign design,
        MassProperties<Body> body,
        Direction<Body> spinAxis,
        Length cordPlaneOffset,
        Force? stiffness,
        double dampingRatio,
        CancellationToken cancellation)
    {
        RequireSameHub(design, body, spinAxis);
        if (design is SpringCordDesign springs)
        {
            Allowed.Require(stiffness is null, nameof(stiffness), stiffness, "left out: spring cords have a stiffness of their own");
            Allowed.Require(dampingRatio == 0, nameof(dampingRatio), dampingRatio, "left out: spring cords have a damping of their own");
            stiffness = springs.Stiffness;
            dampingRatio = springs.DampingRatio;
        }

        LinearDensity density = design is DespinDesign rigid ? rigid.CordLineDensity : LinearDensity.Zero;
        var deployment = new CordDeployment
        {
            Hub = body,
            SpinAxis = spinAxis,
            Rates = Vector<RotationalSpeed, Body>.Along(spinAxis, design.Hub.Spin),
            Cords = [.. Enumerable.Range(0, design.WeightCount).Select(i => new Cord
            {
                WeightMass = design.WeightMass,
                Length = design.CordLength,
                HubRadius = design.Hub.Radius,
                PlaneHeight = body.CentreOfMass.FromOrigin.ComponentAlong(spinAxis) + cordPlaneOffset,
                StartAngle = Angle.FromRadians(2 * Math.PI * i / design.WeightCount),
                LineDensity = density,
                Segments = Pieces,
                Stiffness = stiffness,
                DampingRatio = dampingRatio,
                LetGo = design.LetGo,
            })],
            Until = (Followed * design.Deploy(cancellation).LetGoTime) + Swing(design, stiffness),
            CoarserIfRefused = true,
        };
        return deployment with { Attitude = Upright(deployment.HubAxes) };
    }

    /// <summary>Turned so that the spin axis begins along the inertial third axis, and the side of the first weight along the first.</summary>
    private static Rotation<Body, Inertial> Upright(Rotation<HubAxes, Body> hub) =>
        Rotation<Inertial, Body>.FromQuaternion(hub.X, hub.Y, hub.Z, hub.W).Inverse();

    /// <summary>A cord that stretches lets go later than one that does not, by about as long as its weight takes to swing on it.</summary>
    private static Duration Swing(PlanarDesign design, Force? stiffness) => design is DespinDesign && stiffness is { } force
        ? Duration.FromSeconds(2 * Math.PI * Math.Sqrt(design.WeightMass.ToSi() * design.CordLength.Meters / force.Newtons))
        : Duration.Zero;

    private static void RequireSameHub(PlanarDesign design, MassProperties<Body> body, Direction<Body> spinAxis)
    {
        Allowed.Require(!spinAxis.IsDefault, nameof(spinAxis), spinAxis, "made with Direction<Body>.Of(x, y, z), or left out for the third axis");
        Allowed.Require(body.SiMass > 0, nameof(body), body, "made with MassProperties<Body>.Of(...)");
        double sized = design.Hub.SpinInertia.ToSi();
        double stated = body.Inertia.AboutAxis(spinAxis).ToSi();
        Allowed.Require(
            Math.Abs(stated - sized) <= SameInertia * sized,
            nameof(body),
            body,
            $"the body that the design is for: its moment of inertia about the spin axis is {Quoted.Si(stated, "kg·m²")}, and the design has {Quoted.Si(sized, "kg·m²")}. " +
            "Make the DespinHub with body.Inertia.AboutAxis(...), or change the deployment's Hub afterwards");
    }
}
