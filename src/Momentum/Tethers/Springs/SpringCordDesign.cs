using System.Globalization;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Springs;

/// <summary>A complete planar de-spin with spring cords: cords that stretch, so that more initial spin takes more spin away.</summary>
/// <remarks>
/// <para>Each cord pulls with spring rate times stretch, plus damping; it has no mass, lies on the hub without tension, and is
/// wound so that all of its spring comes off first, next to the weight (one spring rate whatever the free length). Planar and
/// symmetric, as <see cref="DespinHub"/> is.</para>
/// <para>Made by a <see cref="DespinHub"/>, either from stated values or sized. Immutable; equality is by value.</para>
/// <para>A stretched spring that is let go snaps back: on a rig, keep clear of hub and cords as of the weights.</para>
/// </remarks>
public sealed record SpringCordDesign : PlanarDesign
{
    /// <summary>Least final spin, as a fraction of the initial one, for which spring cords are sized.</summary>
    /// <remarks>Of a spin-up error a cord without stretch carries no more than that fraction over.</remarks>
    public const double LeastSpinRatio = 1e-3;

    // Hub radii: some fifty turns. The search follows every swing of the spring on every cord it tries.
    private const double LongestSized = 300;

    internal SpringCordDesign(
        DespinHub hub,
        int weights,
        Mass weightMass,
        Length cordLength,
        ForcePerLength springRate,
        double dampingRatio,
        LetGo letGo)
        : base(hub, weights, weightMass, cordLength, letGo)
    {
        CheckDamping(dampingRatio);
        double mass = weightMass.ToSi();
        double length = cordLength.Meters;
        double rate = Allowed.Positive(
            springRate.NewtonsPerMeter,
            springRate,
            nameof(springRate),
            "Give the spring rate of one whole cord: its E·A over its length, or that of the spring in it.");
        SpringRate = springRate;
        DampingRatio = dampingRatio;
        double spin = hub.Spin.ToSi();
        Proportions = new SpringCordProportions(
            Inertia(hub, weights * mass), length / hub.Radius.Meters, rate / (mass * spin * spin), dampingRatio);
    }

    /// <summary>Tension of each cord by its stretch.</summary>
    public ForcePerLength SpringRate { get; }

    /// <summary>Damping of the stretch, as a fraction of the critical damping of the weight on its cord.</summary>
    public double DampingRatio { get; }

    /// <summary>Spring rate times unstretched length: the stiffness E·A of a cord that stretches evenly, as <see cref="Deployment.Cord"/> takes it.</summary>
    public Force Stiffness => Force.FromNewtons(SpringRate.NewtonsPerMeter * CordLength.Meters);

    internal SpringCordProportions Proportions { get; }

    /// <summary>The motion, by numerical integration of the equations of motion.</summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ComputationRefusedException">
    /// The cords do not come to let-go (they slacken, wind back on, or the let-go spin is not reached), the integration cannot go on,
    /// or momentum and energy of the result do not close.
    /// </exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public override SpringCordMotion Deploy(CancellationToken cancellation = default) => new(this, cancellation);

    /// <summary>The same weights and cords on another hub: what an error of its spin or inertia leaves.</summary>
    /// <param name="hub">The other hub.</param>
    public SpringCordDesign On(DespinHub hub)
    {
        ArgumentNullException.ThrowIfNull(hub);
        return new(hub, WeightCount, WeightMass, CordLength, SpringRate, DampingRatio, LetGo);
    }

    /// <summary>
    /// How the final spin answers to errors of initial spin and spin inertia; to neither if a spin rate lets go at once. Compare with
    /// that of <see cref="WithoutStretch"/>.
    /// </summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ComputationRefusedException">As <see cref="Deploy"/>.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public override SpinSensitivity Sensitivity(CancellationToken cancellation = default)
    {
        _ = Deploy(cancellation);
        SpinSensitivity sensitivity;
        switch (LetGo)
        {
            case LetGo.SpinRule { Si.IsImmediate: true }:
                return default;
            case LetGo.CordAngleRule { Si: { IsImmediate: true, Value: var angle } }:
                var sizing = new SpringCordSizing(angle, cancellation);
                sensitivity = new SpinSensitivity(sizing.ByInitialSpin(Proportions), sizing.ByInertia(Proportions));
                break;
            default:
                const double Step = 1e-3;
                sensitivity = new SpinSensitivity(
                    SpinSensitivity.Slope(factor => FinalBy(factor, 1), Step), SpinSensitivity.Slope(factor => FinalBy(1, factor), Step));
                break;
        }

        return double.IsFinite(sensitivity.ToInitialSpin) && double.IsFinite(sensitivity.ToSpinInertia)
            ? sensitivity
            : throw new ComputationRefusedException(
                "A little more or less initial spin or inertia, and the cords do not come to let-go: there is no sensitivity to state. " +
                "Take stiffer cords, or give them damping.");

        // In initial spins.
        double FinalBy(double spin, double inertia) =>
            On(new DespinHub(Hub.SpinInertia * inertia, Hub.Radius, Hub.Spin * spin)).Deploy(cancellation).FinalSpin / Hub.Spin;
    }

    /// <summary>The design with the same weights and final spin whose cords do not stretch.</summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ComputationRefusedException">A spin rate lets go, so that no length follows; or as <see cref="Deploy"/>.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public DespinDesign WithoutStretch(CancellationToken cancellation = default) => Hub.SizeCordLength(WeightMass, Deploy(cancellation).FinalSpin, LetGo, null, WeightCount);

    /// <summary>Hub, weights, cords and let-go rule, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Hub}; {WeightCount} weights of {WeightMass} on cords of {CordLength} at {SpringRate}, damping ratio {DampingRatio}; let go {LetGo}");

    /// <summary>The design for a weight mass, or for a cord length.</summary>
    internal static SpringCordDesign Size(
        DespinHub hub,
        int weights,
        Mass? weightMass,
        Length? cordLength,
        double dampingRatio,
        RotationalSpeed finalSpin,
        LetGo letGo,
        CancellationToken cancellation)
    {
        CheckDamping(dampingRatio);
        double mass = weightMass is { } each ? weights * Check(weights, each, letGo) : 0;
        double length = cordLength is { } given ? Check(weights, given, letGo) / hub.Radius.Meters : 0;
        double ratio = Sizing.Ratio(hub, finalSpin, letGo);
        if (cordLength is { } tooShort && length < SpringCordSizing.Shortest)
        {
            throw new ComputationRefusedException(
                $"Spring cords of {Quoted.Text(tooShort)} are but {Quoted.Si(length, "hub radii")} long and have hardly begun to unwind when they let go; they are sized from " +
                $"{Quoted.Si(SpringCordSizing.Shortest * hub.Radius.Meters, "m")} on. Give longer cords, and check the units of the length.");
        }

        if (ratio < LeastSpinRatio)
        {
            throw new ComputationRefusedException(
                $"The final spin asked for, {Quoted.Spin(finalSpin.ToSi())}, is not at least a thousandth of the initial one, in the same sense. " +
                "Only where spin is left in that sense can the stretch that more initial spin brings take away what it would leave. For a " +
                "complete de-spin cords without stretch forgive a spin-up error as they are: use SizeCordLength.");
        }

        double angle = letGo.Si.Value;
        double inertia = weightMass is null ? SpringCordSizing.InertiaAtRest(length, ratio, angle) : Inertia(hub, mass);
        (double lengthAtRest, double spring) = SpringCordSizing.AtRest(inertia, ratio, angle);
        var near = new SpringCordProportions(inertia, cordLength is null ? lengthAtRest : length, spring, dampingRatio);
        if (!(near.Length <= LongestSized))
        {
            throw new ComputationRefusedException(
                $"The cords of such a design are about {Quoted.Si(near.Length * hub.Radius.Meters, "m")} long, {Quoted.Si(near.Length / (2 * Math.PI), "turns")} on the hub; spring cords are sized " +
                $"up to {Quoted.Si(LongestSized * hub.Radius.Meters, "m")} here. Take heavier weights, and check the units of inertia and radius.");
        }

        SpringCordProportions found = new SpringCordSizing(angle, cancellation).Size(ratio, near, weightMass is null)
            ?? throw new ComputationRefusedException(
                $"No {(weightMass is null ? "weights" : "cord length")} and spring were found that leave {Quoted.Spin(finalSpin.ToSi())} of {Quoted.Spin(hub.Spin.ToSi())} " +
                "whatever the initial spin: cords that stretch so much do not come to let-go, or are hardly unwound by then. Ask for less final spin, " +
                "take lighter weights or longer cords, or let go at the tangent.");
        double all = weightMass is null ? hub.SpinInertia.ToSi() / (found.Inertia * hub.Radius.Meters * hub.Radius.Meters) : mass;
        double spin = hub.Spin.ToSi();
        return new(
            hub,
            weights,
            weightMass ?? Mass.FromKilograms(all / weights),
            cordLength ?? Length.FromMeters(found.Length * hub.Radius.Meters),
            ForcePerLength.FromNewtonsPerMeter(found.Spring * all / weights * spin * spin),
            dampingRatio,
            letGo);
    }

    /// <summary>Tension of one cord, N, from that of all without units.</summary>
    internal double Tension(double tension)
    {
        double spin = Hub.Spin.ToSi();
        return tension * WeightMass.ToSi() * Hub.Radius.Meters * spin * spin;
    }

    private static double Inertia(DespinHub hub, double mass) =>
        hub.SpinInertia.ToSi() / (mass * hub.Radius.Meters * hub.Radius.Meters);

    private static void CheckDamping(double dampingRatio)
    {
        if (!(dampingRatio is >= 0 and <= 10))
        {
            throw new ArgumentOutOfRangeException(
                nameof(dampingRatio), dampingRatio, "dampingRatio must be 0 to 10, a fraction of critical damping. Leave it out for cords without damping.");
        }
    }
}
