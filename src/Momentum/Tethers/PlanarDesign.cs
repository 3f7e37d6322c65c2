using System.Globalization;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>A complete planar de-spin, whatever its cords: hub, weights, cords and the rule that lets them go.</summary>
/// <remarks>
/// Either a <see cref="DespinDesign"/>, whose cords do not stretch, or a <see cref="Springs.SpringCordDesign"/>. Immutable;
/// equality is by value.
/// </remarks>
public abstract record PlanarDesign
{
    private protected PlanarDesign(DespinHub hub, int weights, Mass weightMass, Length cordLength, LetGo letGo)
    {
        Check(weights, weightMass, letGo);
        Check(weights, cordLength, letGo);
        Hub = hub;
        WeightCount = weights;
        WeightMass = weightMass;
        CordLength = cordLength;
        LetGo = letGo;
    }

    /// <summary>The spinning body.</summary>
    public DespinHub Hub { get; }

    /// <summary>How many weights, each on its own cord, evenly spaced.</summary>
    public int WeightCount { get; }

    /// <summary>Mass of each weight.</summary>
    public Mass WeightMass { get; }

    /// <summary>Unstretched length of each cord, from the hub to the weight's centre of mass.</summary>
    public Length CordLength { get; }

    /// <summary>When the cords let go of the hub.</summary>
    public LetGo LetGo { get; }

    /// <summary>Turns of cord wound on the hub at the start.</summary>
    public double CordTurns => CordLength.Meters / (2 * Math.PI * Hub.Radius.Meters);

    /// <summary>The whole motion.</summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ComputationRefusedException">
    /// The cords do not come to let-go, or momentum and energy of the result do not close.
    /// </exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public abstract PlanarMotion Deploy(CancellationToken cancellation = default);

    /// <summary>The design in three dimensions: everything that the planar motion leaves out, to be deployed.</summary>
    /// <remarks>
    /// <para>The weights begin evenly spaced, the first on the first of <see cref="CordDeployment.HubAxes"/>; the cords are wound
    /// against the spin. The body starts upright: the spin axis along the inertial third axis, the first weight's side along the
    /// first. It is followed one and a half times as long as the planar motion takes to let-go, with the swing of a stretching
    /// cord added. Cords with mass are cut into four straight pieces, or fewer where these are refused.</para>
    /// <para>What else is known is stated with <c>with</c> and <see cref="CordDeployment.EachCord"/>, a wobble before release with
    /// <see cref="CordDeployment.Wobbling"/>.</para>
    /// </remarks>
    /// <param name="body">The hub without weights and cords; its moment about the spin axis is the design's spin inertia.</param>
    /// <param name="spinAxis">The spin axis, through the body origin; the third body axis if left out.</param>
    /// <param name="cordPlaneOffset">Height of the cords' plane above the centre of mass, along the spin axis; zero if left out.</param>
    /// <param name="stiffness">E·A of each cord; if left out that of the design's springs, and cords that do not stretch otherwise.</param>
    /// <param name="dampingRatio">Damping of the stretch, as a fraction of the critical damping of the weight on its cord, 0 to 10.</param>
    /// <param name="cancellation">Ends the planar computation early.</param>
    /// <exception cref="ArgumentException">
    /// The body is another than the design is for, or springs are given a stiffness besides their own; the message says which.
    /// </exception>
    /// <exception cref="ComputationRefusedException">As <see cref="Deploy"/>.</exception>
    public CordDeployment InSpace(
        MassProperties<Body> body,
        Direction<Body>? spinAxis = null,
        Length? cordPlaneOffset = null,
        Force? stiffness = null,
        double dampingRatio = 0,
        CancellationToken cancellation = default) => DesignInSpace.Of(
            this, body, spinAxis ?? Direction<Body>.ZAxis, cordPlaneOffset ?? Length.Zero, stiffness, dampingRatio, cancellation);

    /// <summary>How the final spin answers to errors of initial spin and spin inertia; to neither if a spin rate lets go.</summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ComputationRefusedException">As <see cref="Deploy"/>; or there is no slope to state.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public abstract SpinSensitivity Sensitivity(CancellationToken cancellation = default);

    /// <summary>Hub, weights, cords and let-go rule, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Hub}; {WeightCount} weights of {WeightMass} on cords of {CordLength}; let go {LetGo}");

    /// <summary>Judges what every sizing is given; returns the mass of one weight, kg.</summary>
    internal static double Check(int weights, Mass weightMass, LetGo letGo)
    {
        Check(weights, letGo);
        return Allowed.Positive(
            weightMass.ToSi(), weightMass, nameof(weightMass), "Give the mass of one weight, or size it from the cord length.");
    }

    /// <summary>Judges what every sizing is given; returns the length of one cord, m.</summary>
    internal static double Check(int weights, Length cordLength, LetGo letGo)
    {
        Check(weights, letGo);
        return Allowed.Positive(
            cordLength.Meters, cordLength, nameof(cordLength), "Give the length of one cord, or size it from the weight mass.");
    }

    /// <summary>Refuses a let-go rule that is met before anything has moved.</summary>
    internal void RefuseMetAtStart()
    {
        double initial = Hub.Spin.ToSi();
        if (LetGo.Si.In(initial).Condition(0, 1, -CordLength.Meters / Hub.Radius.Meters) < 0)
        {
            return;
        }

        throw new ComputationRefusedException(LetGo is LetGo.SpinRule { Spin: var spin }
            ? $"The cords are to let go at {Quoted.Spin(spin.ToSi())}, which is not below the initial spin, {Quoted.Spin(initial)}: the spin only " +
              "falls. Give a lower let-go spin."
            : $"The cords are to let go at {LetGo}, which is met before anything has unwound: {Quoted.Si(CordTurns * 360, "deg")} of cord are wound " +
              "on the hub. Give a later one.");
    }

    private static void Check(int weights, LetGo letGo)
    {
        ArgumentNullException.ThrowIfNull(letGo);
        Allowed.Require(
            letGo is not LetGo.NeverRule,
            nameof(letGo),
            letGo,
            "a rule that lets go: the planar motion is followed up to its let-go. Deploy in three dimensions for a cord that stays on");
        Allowed.Weights(weights, nameof(weights));
    }
}
