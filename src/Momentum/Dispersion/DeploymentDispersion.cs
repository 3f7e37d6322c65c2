using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>
/// A deployment of cords in three dimensions with what is uncertain about it: ensembles of the whole motion, wobble and all.
/// </summary>
/// <remarks>
/// <para>What scatters is what <see cref="DespinUncertainty"/> says, alike for all cords, with the same draws as those of a
/// <see cref="DespinDispersion"/> with the same seed; besides it the direction of the wobble at the start, which nobody
/// knows: all round the spin axis with equal chance. The size of the wobble is that of the deployment's start. Of the
/// inertia, the moment about the spin axis scatters; the moments and products across it stay, and a draw that no body can
/// have is counted as not physical. The delay of the last weight falls on one cord, each with equal chance.</para>
/// <para>Every draw is a function of seed, case number and input, so that the same call gives the same bits on any number of
/// threads. Immutable, so safe to share between threads.</para>
/// <para>A cord with mass costs with its <see cref="Cord.Segments"/>: four take about three times as long as two, ten times
/// as long as one. Their error of the spin shifts all cases alike and falls to a quarter when they are doubled, so that two
/// are often enough for the scatter, and the nominal deployment with more tells the shift.</para>
/// <para>Weights fly at tens of metres a second and cords carry hundreds of newtons. A probability found here supports a
/// design review; it replaces neither a range's safety rules nor the work of licensed people on ordnance and rigs.</para>
/// </remarks>
public sealed class DeploymentDispersion
{
    private const int ChunkOfCases = 8;

    // Inputs that a planar de-spin has not, counted on from those that it has.
    private const int NutationDraw = DespinCase.Inputs;
    private const int DirectionDraw = DespinCase.Inputs + 1;
    private const int LateCordDraw = DespinCase.Inputs + 2;

    private readonly (ScatterShape Shape, double Width)[] _scatter;
    private readonly double _spin;
    private readonly double _nutation;

    /// <summary>Joins a deployment and what is uncertain about it.</summary>
    /// <param name="deployment">
    /// The nominal deployment. Its <see cref="CordDeployment.Until"/> must leave a slow case time to let go; its
    /// <see cref="CordDeployment.Tolerance"/> is not used.
    /// </param>
    /// <param name="uncertainty">What scatters about it; the hub's mass is taken from the deployment.</param>
    /// <exception cref="ArgumentException">
    /// A value of the deployment is not allowed, or the let-go angle scatters and a cord does not let go at an angle.
    /// </exception>
    public DeploymentDispersion(CordDeployment deployment, DespinUncertainty uncertainty)
    {
        ArgumentNullException.ThrowIfNull(deployment);
        ArgumentNullException.ThrowIfNull(uncertainty);
        Deployment = deployment;
        Uncertainty = uncertainty;
        _scatter = uncertainty.Scatters;
        HubConstants hub = deployment.CheckedHub();
        Vec rates = deployment.Rates.Si;
        _spin = rates.Dot(hub.Axis);
        CordConstants[] cords = deployment.CheckedCords(_spin);
        deployment.CheckedSurroundings(_spin);
        deployment.CheckedEnd();
        _nutation = new Mechanism(hub, cords).Nutation(rates);
        if (uncertainty.LetGoAngle is { Shape: not ScatterShape.None, Width.Radians: > 0 } && deployment.Cords.Any(c => c.LetGo is not LetGo.CordAngleRule))
        {
            throw new ArgumentException(
                "LetGoAngle scatters, and a cord does not let go at a cord angle but at a spin rate, at a time or never, which leaves no angle " +
                "to be missed. Leave LetGoAngle out, or give every cord LetGo.AtCordAngle.",
                nameof(uncertainty));
        }
    }

    /// <summary>The nominal deployment.</summary>
    public CordDeployment Deployment { get; }

    /// <summary>What scatters about it.</summary>
    public DespinUncertainty Uncertainty { get; }

    /// <summary>
    /// The deployment of one case, to look at it alone: <see cref="CordDeployment.Deploy"/> computes it with all its events.
    /// A cord whose let-go angle is drawn past the other tangent never lets go.
    /// </summary>
    /// <param name="number">Number of the case, from zero.</param>
    /// <param name="seed">As for <see cref="Run"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    /// <exception cref="ArgumentException">A value that was drawn is not physical; the message names it.</exception>
    public CordDeployment Case(long number, ulong seed = 1)
    {
        CounterRandom.RequireCase(number, nameof(number));
        double inertia = Drawn(UncertainInput.SpinInertia);
        double spin = Drawn(UncertainInput.InitialSpin);
        double radius = Drawn(UncertainInput.HubRadius);
        double mass = Drawn(UncertainInput.WeightMass);
        double length = Drawn(UncertainInput.CordLength);
        double density = Drawn(UncertainInput.CordLineDensity);
        double letGo = Drawn(UncertainInput.LetGoAngle);
        double delay = Math.Abs(Drawn(UncertainInput.SecondWeightDelay));
        Scatter<Angle> wobble = Uncertainty.Nutation;
        double nutation = Math.Abs(_nutation + CounterRandom.Draw(wobble.Shape, wobble.Width.Radians, seed, number, NutationDraw));
        double direction = 2 * Math.PI * CounterRandom.Uniform(seed, number, DirectionDraw);
        int late = (int)(Deployment.Cords.Count * CounterRandom.Uniform(seed, number, LateCordDraw));
        double size = Math.Abs(_spin) + spin;
        Allowed.Require(size > 0, nameof(Uncertainty.InitialSpin), RotationalSpeed.FromRadiansPerSecond(size), "of the sense of the nominal one");
        Cord[] cords = new Cord[Deployment.Cords.Count];
        for (int i = 0; i < cords.Length; i++)
        {
            Cord cord = Deployment.Cords[i];
            cords[i] = cord with
            {
                WeightMass = Mass.FromKilograms(cord.WeightMass.ToSi() + mass),
                Length = Length.FromMeters(cord.Length.Meters + length),
                HubRadius = Length.FromMeters(cord.HubRadius.Meters + radius),
                LineDensity = LinearDensity.FromKilogramsPerMeter(cord.LineDensity.ToSi() + density),
                LetGo = cord.LetGo,
            };
            cords[i] = cords[i] with { LetGo = LetGoOf(cords[i], letGo, i == late ? delay : 0) };
        }

        CordDeployment drawn = Deployment with
        {
            Hub = inertia == 0 ? Deployment.Hub : WithSpinInertia(inertia),
            Cords = cords,
            Rates = Vector<RotationalSpeed, Body>.Along(Deployment.SpinAxis, RotationalSpeed.FromRadiansPerSecond(Math.Sign(_spin) * size)),
        };
        return Deployment.Rig is null ? drawn.Wobbling(Angle.FromRadians(nutation), Angle.FromRadians(direction)) : drawn;

        double Drawn(UncertainInput input) =>
            CounterRandom.Draw(_scatter[(int)input].Shape, _scatter[(int)input].Width, seed, number, (int)input);
    }

    /// <summary>Runs an ensemble, each case up to the last let-go and from there, in closed form, over all time.</summary>
    /// <param name="cases">How many cases, 1 to 10 million; a case takes from half a millisecond to some, see the remarks.</param>
    /// <param name="seed">Chooses the draws; any number.</param>
    /// <param name="firstCase">Number of the first case, so that a long run can be made in pieces and merged.</param>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of cases or of the first case is out of range.</exception>
    /// <exception cref="ComputationRefusedException">In no case are all weights let go.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public DeploymentEnsemble Run(int cases = 2000, ulong seed = 1, long firstCase = 0, CancellationToken cancellation = default)
    {
        if (cases is < 1 or > 10_000_000)
        {
            throw new ArgumentOutOfRangeException(nameof(cases), cases, "An ensemble of deployments has 1 to 10,000,000 cases.");
        }

        CounterRandom.RequireCase(firstCase, nameof(firstCase));
        var figures = new double[cases * DeploymentCase.Figures];
        var outcomes = new DeploymentOutcome[cases];
        var slack = new bool[cases];
        var deck = new bool[cases];
        Parallel.For(
            0,
            (cases + ChunkOfCases - 1) / ChunkOfCases,
            new ParallelOptions { CancellationToken = cancellation },
            () => new DeploymentCase(Deployment),
            (chunk, _, one) =>
            {
                int end = Math.Min(cases, (chunk + 1) * ChunkOfCases);
                for (int i = chunk * ChunkOfCases; i < end; i++)
                {
                    Span<double> found = figures.AsSpan(i * DeploymentCase.Figures, DeploymentCase.Figures);
                    try
                    {
                        outcomes[i] = one.Run(Case(firstCase + i, seed), found, out slack[i], out deck[i], cancellation);
                    }
                    catch (ArgumentException)
                    {
                        found.Fill(double.NaN);
                        outcomes[i] = DeploymentOutcome.NotPhysical;
                    }
                }

                return one;
            },
            _ => { });
        return DeploymentEnsemble.Of(this, outcomes, figures, slack, deck);
    }

    /// <summary>The rule missed by an angle and late by a delay; never early of the start.</summary>
    private static LetGo LetGoOf(Cord cord, double missed, double delay)
    {
        LetGo rule = cord.LetGo;
        if (missed != 0)
        {
            double wound = (cord.Length.Meters - cord.Hanging.Meters) / cord.HubRadius.Meters;
            double angle = Math.Max(rule.Si.Value + missed, (2 * CordConstants.NeverWound) - wound);
            rule = angle <= Math.PI
                ? LetGo.AtCordAngle(Angle.FromRadians(angle)).WithDelay(rule.Si.Delay)
                : LetGo.Never;
        }

        return delay == 0 ? rule : rule.Delayed(Duration.FromSeconds(delay));
    }

    private MassProperties<Body> WithSpinInertia(double change)
    {
        MassProperties<Body> hub = Deployment.Hub;
        Direction<Body> a = Deployment.SpinAxis;
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
