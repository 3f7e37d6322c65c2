using System.Globalization;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>A complete planar de-spin: hub, weights, cords and the rule that lets them go.</summary>
/// <remarks>Made by a <see cref="DespinHub"/>, either from stated values or sized. Immutable; equality is by value.</remarks>
public sealed record DespinDesign
{
    internal DespinDesign(
        DespinHub hub, int weights, Mass weightMass, Length cordLength, LinearDensity cordLineDensity, LetGo letGo)
    {
        Check(weights, weightMass, cordLineDensity, letGo);
        Check(weights, cordLength, cordLineDensity, letGo);
        Hub = hub;
        Weights = weights;
        WeightMass = weightMass;
        CordLength = cordLength;
        CordLineDensity = cordLineDensity;
        LetGo = letGo;
    }

    /// <summary>The spinning body.</summary>
    public DespinHub Hub { get; }

    /// <summary>How many weights, each on its own cord, evenly spaced.</summary>
    public int Weights { get; }

    /// <summary>Mass of each weight.</summary>
    public Mass WeightMass { get; }

    /// <summary>Length of each cord, from the hub to the weight's centre of mass.</summary>
    public Length CordLength { get; }

    /// <summary>Mass per length of each cord; zero if taken as massless.</summary>
    public LinearDensity CordLineDensity { get; }

    /// <summary>When the cords let go of the hub.</summary>
    public LetGo LetGo { get; }

    /// <summary>Turns of cord wound on the hub at the start.</summary>
    public double CordTurns => CordLength.Meters / (2 * Math.PI * Hub.Radius.Meters);

    /// <summary>Hub, weights, cords and let-go rule, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Hub}; {Weights} weights of {WeightMass} on cords of {CordLength} at {CordLineDensity}; let go {LetGo}");

    internal PlanarCords Cords => new(
        Hub.SpinInertia.ToSi(),
        Hub.Radius.Meters,
        Weights * WeightMass.ToSi(),
        Weights * CordLineDensity.ToSi(),
        CordLength.Meters);

    /// <summary>The whole motion in closed form.</summary>
    /// <exception cref="ComputationRefusedException">
    /// The let-go rule is never met, or momentum and energy of the result do not close.
    /// </exception>
    public DespinMotion Deploy() => new(this);

    /// <summary>The same motion by numerical integration of Lagrange's equations, as a check.</summary>
    /// <param name="relativeTolerance">Relative error allowed a step, 1e-15 to 1e-3.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is outside its range.</exception>
    /// <exception cref="ComputationRefusedException">
    /// The let-go rule is never met, the integration cannot go on, or momentum and energy do not close.
    /// </exception>
    public IntegratedDespin Integrate(double relativeTolerance = 1e-13) => relativeTolerance is >= 1e-15 and <= 1e-3
        ? new(this, relativeTolerance)
        : throw new ArgumentOutOfRangeException(
            nameof(relativeTolerance), relativeTolerance, "The relative tolerance must be from 1e-15 to 1e-3.");

    /// <summary>How the final spin answers to errors of initial spin and spin inertia; to neither if a spin rate lets go.</summary>
    /// <exception cref="ComputationRefusedException">As <see cref="Deploy"/>.</exception>
    public SpinSensitivity Sensitivity()
    {
        DespinMotion motion = Deploy();
        if (LetGo.CordAngle is not { } angle)
        {
            return default;
        }

        // The final spin over the initial one does not depend on the initial one. By inertia the step errs by 1e-12.
        double FinalBy(double factor) => new PlanarCords(
            Hub.SpinInertia.ToSi() * factor,
            Hub.Radius.Meters,
            Weights * WeightMass.ToSi(),
            Weights * CordLineDensity.ToSi(),
            CordLength.Meters).Spin(angle.Radians);
        return new SpinSensitivity(motion.FinalSpin / Hub.Spin, SpinSensitivity.Slope(FinalBy, 1e-3));
    }

    internal DespinLedger Close(IEnumerable<DespinState> states, double allowed) => DespinLedger.Close(
        Cords.Carried, Hub.Spin.ToSi(), states.Select(state => (state.AngularMomentum, state.Energy.Total)), allowed);

    internal static double Check(int weights, Mass weightMass, LinearDensity cordLineDensity, LetGo letGo)
    {
        CheckCords(weights, cordLineDensity, letGo);
        return Allowed.Positive(
            weightMass.ToSi(), weightMass, nameof(weightMass), "Give the mass of one weight, or size it from the cord length.");
    }

    internal static double Check(int weights, Length cordLength, LinearDensity cordLineDensity, LetGo letGo)
    {
        CheckCords(weights, cordLineDensity, letGo);
        return Allowed.Positive(
            cordLength.Meters, cordLength, nameof(cordLength), "Give the length of one cord, or size it from the weight mass.");
    }

    private static void CheckCords(int weights, LinearDensity cordLineDensity, LetGo letGo)
    {
        ArgumentNullException.ThrowIfNull(letGo);
        Allowed.Weights(weights, nameof(weights));
        Allowed.ZeroOrPositive(
            cordLineDensity.ToSi(),
            cordLineDensity,
            nameof(cordLineDensity),
            "Give the mass per length of one cord, or leave it out for a massless one.");
    }
}
