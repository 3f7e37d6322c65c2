using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>By how much one case of a deployment differs from the nominal one, SI; moved by the rows of <see cref="UncertainInputs"/>.</summary>
internal sealed class DeploymentDraw
{
    private readonly CordDeployment _nominal;
    private readonly CordDraw[] _cords;

    internal DeploymentDraw(CordDeployment nominal, double nutation)
    {
        _nominal = nominal;
        _cords = new CordDraw[nominal.Cords.Count];
        Nutation = nutation;
    }

    /// <summary>Added to the moment about the spin axis.</summary>
    internal double SpinInertia { get; set; }

    /// <summary>Added to the size of the initial spin.</summary>
    internal double InitialSpin { get; set; }

    /// <summary>Nutation before release; a negative one counts by its size.</summary>
    internal double Nutation { get; set; }

    /// <summary>To which side of the spin axis the wobble points at the start.</summary>
    internal double NutationDirection { get; set; }

    /// <summary>Each cord with its weight.</summary>
    internal Span<CordDraw> Cords => _cords;

    /// <summary>The deployment of the case. A cord that misses its let-go angle past the other tangent never lets go.</summary>
    /// <exception cref="ArgumentException">A value is not physical; the message names it.</exception>
    internal CordDeployment Deployment()
    {
        double spin = _nominal.Rates.ComponentAlong(_nominal.SpinAxis).ToSi();
        double size = Math.Abs(spin) + InitialSpin;
        Allowed.Require(size > 0, nameof(InitialSpin), RotationalSpeed.FromRadiansPerSecond(size), "of the sense of the nominal one");
        var cords = new Cord[_cords.Length];
        for (int i = 0; i < cords.Length; i++)
        {
            cords[i] = CordOf(_nominal.Cords[i], _cords[i]);
        }

        CordDeployment drawn = _nominal with
        {
            Hub = SpinInertia == 0 ? _nominal.Hub : WithSpinInertia(_nominal.Hub, _nominal.SpinAxis, SpinInertia),
            Cords = cords,
            Rates = Vector<RotationalSpeed, Body>.Along(_nominal.SpinAxis, RotationalSpeed.FromRadiansPerSecond(Math.Sign(spin) * size)),
        };
        return _nominal.Rig is null
            ? drawn.Wobbling(Angle.FromRadians(Math.Abs(Nutation)), Angle.FromRadians(NutationDirection))
            : drawn;
    }

    private static Cord CordOf(Cord cord, in CordDraw draw)
    {
        Cord drawn = cord with
        {
            WeightMass = Mass.FromKilograms(cord.WeightMass.ToSi() + draw.WeightMass),
            Length = Length.FromMeters(cord.Length.Meters + draw.Length),
            HubRadius = Length.FromMeters(cord.HubRadius.Meters + draw.HubRadius),
            LineDensity = LinearDensity.FromKilogramsPerMeter(cord.LineDensity.ToSi() + draw.LineDensity),
        };
        LetGo rule = cord.LetGo;
        if (draw.LetGoMiss != 0)
        {
            double wound = (drawn.Length.Meters - drawn.Hanging.Meters) / drawn.HubRadius.Meters;
            rule = rule.Missed(draw.LetGoMiss, (2 * CordConstants.NeverWound) - wound);
        }

        return drawn with { LetGo = draw.LateBy == 0 ? rule : rule.WithDelay(rule.Si.Delay + draw.LateBy) };
    }

    private static MassProperties<Body> WithSpinInertia(MassProperties<Body> hub, Direction<Body> a, double change)
    {
        Tensor s = hub.Inertia.Si;
        Tensor changed = new(
            s.Xx + (change * a.X * a.X),
            s.Yy + (change * a.Y * a.Y),
            s.Zz + (change * a.Z * a.Z),
            s.Xy + (change * a.X * a.Y),
            s.Xz + (change * a.X * a.Z),
            s.Yz + (change * a.Y * a.Z));
        return PhysicalInertia.Refusal(changed) is { } reason
            ? throw new ArgumentException($"With the spin inertia that was drawn the hub's inertia is not physical: {reason}.", nameof(change))
            : MassProperties<Body>.Of(hub.Mass, hub.CentreOfMass, new InertiaTensor<Body>(changed));
    }
}
