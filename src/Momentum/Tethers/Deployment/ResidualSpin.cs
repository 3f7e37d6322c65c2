using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>The spin that is left at the end, split by what is to blame for it.</summary>
/// <remarks>
/// Found by computing the deployment again without each cause that is present, and once without all of them: the ideal.
/// Causes act on each other, so the shares need not sum to the whole; what is missing is <see cref="Together"/>. Made by
/// <see cref="CordDeployment.ExplainFinalSpin"/>. Immutable, so safe to share between threads.
/// </remarks>
public sealed class ResidualSpin
{
    private static readonly (SpinCause Cause, Func<CordDeployment, CordDeployment> Without)[] _causes =
    [
        (SpinCause.Wobble, Steady),
        (SpinCause.Imbalance, Balanced),
        (SpinCause.CordPlaneOffset, Level),
        (SpinCause.CordStretch, d => d.EachCord(c => c with { Stiffness = null, DampingRatio = 0 })),
        (SpinCause.CordMass, d => d.EachCord(c => c with { LineDensity = LinearDensity.Zero })),
        (SpinCause.DrumFriction, d => d.EachCord(c => c with { DrumFriction = 0 })),
        (SpinCause.UnequalCords, Equal),
        (SpinCause.LateRelease, d => d.EachCord(c => c.ReleasedAt is null ? c : c with { ReleasedAt = Duration.Zero })),
        (SpinCause.LateLetGo, d => d.EachCord(c => c with { LetGo = Timed(c.LetGo, 0) })),
        (SpinCause.StuckCords, d => d.EachCord(c => c with { ReleasedAt = c.ReleasedAt ?? Duration.Zero, JamsAt = null })),
        (SpinCause.Rig, d => d with { Rig = null }),
    ];

    internal ResidualSpin(CordDeployment deployment, CancellationToken cancellation)
    {
        double whole = Spin(deployment, cancellation);
        CordDeployment ideal = deployment;
        List<SpinShare> shares = [];
        double sum = 0;
        foreach ((SpinCause cause, Func<CordDeployment, CordDeployment> without) in _causes)
        {
            ideal = without(ideal);
            CordDeployment other = without(deployment);
            if (Same(other, deployment))
            {
                continue;
            }

            double share = whole - Spin(other, cancellation);
            sum += share;
            shares.Add(new SpinShare(cause, RotationalSpeed.FromRadiansPerSecond(share)));
        }

        double left = Spin(ideal, cancellation);
        Final = RotationalSpeed.FromRadiansPerSecond(whole);
        Ideal = RotationalSpeed.FromRadiansPerSecond(left);
        Shares = shares;
        Together = RotationalSpeed.FromRadiansPerSecond(whole - left - sum);
    }

    /// <summary>The final spin.</summary>
    public RotationalSpeed Final { get; }

    /// <summary>The final spin without any of the causes: what the design aims at.</summary>
    public RotationalSpeed Ideal { get; }

    /// <summary>The share of each cause that is present.</summary>
    public IReadOnlyList<SpinShare> Shares { get; }

    /// <summary>What the causes do only together: final less ideal less all shares.</summary>
    public RotationalSpeed Together { get; }

    private static double Spin(CordDeployment deployment, CancellationToken cancellation) => deployment.Deploy(cancellation).FinalSpin.ToSi();

    private static bool Same(CordDeployment one, CordDeployment other) =>
        one.Hub == other.Hub && one.Rates == other.Rates && one.Rig == other.Rig && one.Cords.SequenceEqual(other.Cords);

    private static CordDeployment Steady(CordDeployment deployment) => deployment with
    {
        Rates = Vector<RotationalSpeed, Body>.Along(deployment.SpinAxis, deployment.Rates.ComponentAlong(deployment.SpinAxis)),
    };

    private static CordDeployment Balanced(CordDeployment deployment)
    {
        MassProperties<Body> hub = deployment.Hub;
        Vec axis = deployment.SpinAxis.Si;
        Vec centre = hub.CentreOfMass.FromOrigin.Si;
        Tensor si = hub.Inertia.Si;

        // J less p aᵀ + a pᵀ, with p the part of J a across the axis a: no products with the axis are left.
        Vec along = si * axis;
        Vec p = along - (along.Dot(axis) * axis);
        if (p.Length == 0 && (centre - (centre.Dot(axis) * axis)).Length == 0)
        {
            return deployment;
        }

        Tensor balanced = new(
            si.Xx - (2 * p.X * axis.X),
            si.Yy - (2 * p.Y * axis.Y),
            si.Zz - (2 * p.Z * axis.Z),
            si.Xy - (p.X * axis.Y) - (p.Y * axis.X),
            si.Xz - (p.X * axis.Z) - (p.Z * axis.X),
            si.Yz - (p.Y * axis.Z) - (p.Z * axis.Y));
        return deployment with
        {
            Hub = MassProperties<Body>.Of(
                hub.Mass,
                Position<Body>.Origin + Vector<Length, Body>.FromSi(centre.Dot(axis) * axis),
                new InertiaTensor<Body>(balanced)),
        };
    }

    private static CordDeployment Level(CordDeployment deployment)
    {
        Length height = deployment.Hub.CentreOfMass.FromOrigin.ComponentAlong(deployment.SpinAxis);
        return deployment.EachCord(c => c.PlaneHeight.Equals(height, Length.FromNanometers(1)) ? c : c with { PlaneHeight = height });
    }

    private static CordDeployment Equal(CordDeployment deployment)
    {
        IReadOnlyList<Cord> cords = deployment.Cords;
        Cord first = cords[0];
        bool equal = true;
        for (int i = 0; i < cords.Count; i++)
        {
            Angle spaced = first.StartAngle + Angle.FromRadians(2 * Math.PI * i / cords.Count);
            equal &= Math.Abs(Math.IEEERemainder(cords[i].StartAngle.Radians - spaced.Radians, 2 * Math.PI)) < 1e-9 &&
                Alike(cords[i], first) == first;
        }

        if (equal)
        {
            return deployment;
        }

        Cord mean = first with
        {
            WeightMass = Mass.FromKilograms(cords.Average(c => c.WeightMass.ToSi())),
            Length = Length.FromMeters(cords.Average(c => c.Length.Meters)),
            HubRadius = Length.FromMeters(cords.Average(c => c.HubRadius.Meters)),
            Hanging = Length.FromMeters(cords.Average(c => c.Hanging.Meters)),
        };
        return deployment with
        {
            Cords = [.. cords.Select((c, i) => Alike(mean, c) with
            {
                StartAngle = first.StartAngle + Angle.FromRadians(2 * Math.PI * i / cords.Count),
            })],
        };
    }

    /// <summary>A rule with another delay in seconds. The latency of a spin sensor belongs to the design, as a time does.</summary>
    private static LetGo Timed(LetGo rule, double delay) => rule is LetGo.CordAngleRule ? rule.WithDelay(delay) : rule;

    /// <summary>A cord with the place, height and timing of another: these are causes of their own.</summary>
    private static Cord Alike(Cord cord, Cord other) => cord with
    {
        StartAngle = other.StartAngle,
        PlaneHeight = other.PlaneHeight,
        ReleasedAt = other.ReleasedAt,
        JamsAt = other.JamsAt,
        LetGo = Timed(cord.LetGo, other.LetGo.Si.Delay),
    };
}
