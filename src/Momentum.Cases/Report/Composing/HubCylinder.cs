using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;

namespace Momentum.Cases.Report.Composing;

/// <summary>The cylinder that stands for the hub: hub radius, and a length that shows how slender the body's inertia is.</summary>
internal static class HubCylinder
{
    // Beyond these the picture would be a plate or a needle.
    private const double Shortest = 0.3;
    private const double Longest = 6;

    // How far the cylinder reaches past a drum, as a share of the radius.
    private const double Rim = 0.15;

    /// <summary>The shape.</summary>
    /// <param name="inertia">The hub's inertia about its centre of mass; null if only the moment about the spin axis is known.</param>
    /// <param name="spinAxis">The spin axis.</param>
    /// <param name="radius">Of the drum, m.</param>
    /// <param name="drumHeights">Heights of the drums from the centre of mass, m.</param>
    /// <param name="axisX">Where the drums' axis passes the centre of mass, along the hub's first axis, m.</param>
    /// <param name="axisY">The same along the second axis, m.</param>
    public static HubShape Of(
        InertiaTensor<Body>? inertia, Direction<Body> spinAxis, double radius, IReadOnlyList<double> drumHeights, double axisX = 0, double axisY = 0)
    {
        double half = 0.5 * radius * (inertia is { } known ? Slenderness(known, spinAxis) : 1);
        return new HubShape(
            radius,
            Math.Min(-half, drumHeights.Min() - (Rim * radius)),
            Math.Max(half, drumHeights.Max() + (Rim * radius)),
            axisX,
            axisY,
            inertia is null
                ? "The hub is drawn as a cylinder of the drum's radius; its length stands for nothing."
                : "The hub is drawn as a cylinder of the drum's radius, as slender as a homogeneous one with the body's ratio of transverse to spin inertia.");
    }

    /// <summary>
    /// Length over radius of a homogeneous cylinder with this ratio of inertias: (3 r² + l²)/12 over r²/2 is the ratio, so
    /// l/r = √(6 ratio − 3). A ratio under one half is a lamina's, and drawn as flat as is drawn.
    /// </summary>
    private static double Slenderness(InertiaTensor<Body> inertia, Direction<Body> spinAxis)
    {
        PrincipalAxes<Body> principal = inertia.PrincipalAxes();
        double all = principal.Smallest.KilogramSquareMeters + principal.Intermediate.KilogramSquareMeters + principal.Largest.KilogramSquareMeters;
        double spin = inertia.AboutAxis(spinAxis).KilogramSquareMeters;
        double ratio = (all - spin) / (2 * spin);
        return Math.Clamp(Math.Sqrt(Math.Max(0, (6 * ratio) - 3)), Shortest, Longest);
    }
}
