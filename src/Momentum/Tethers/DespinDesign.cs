using System.Globalization;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>A complete planar de-spin whose cords do not stretch.</summary>
/// <remarks>Made by a <see cref="DespinHub"/>, either from stated values or sized. Immutable; equality is by value.</remarks>
public sealed record DespinDesign : PlanarDesign
{
    internal DespinDesign(
        DespinHub hub, int weights, Mass weightMass, Length cordLength, LinearDensity cordLineDensity, LetGo letGo)
        : base(hub, weights, weightMass, cordLength, letGo)
    {
        Check(cordLineDensity);
        CordLineDensity = cordLineDensity;
    }

    /// <summary>Mass per length of each cord; zero if taken as massless.</summary>
    public LinearDensity CordLineDensity { get; }

    /// <summary>Hub, weights, cords and let-go rule, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Hub}; {WeightCount} weights of {WeightMass} on cords of {CordLength} at {CordLineDensity}; let go {LetGo}");

    internal PlanarCords Cords => new(
        Hub.SpinInertia.ToSi(),
        Hub.Radius.Meters,
        WeightCount * WeightMass.ToSi(),
        WeightCount * CordLineDensity.ToSi(),
        CordLength.Meters);

    /// <summary>The whole motion in closed form.</summary>
    /// <param name="cancellation">Not looked at: a closed form is soon done.</param>
    /// <exception cref="ComputationRefusedException">
    /// The let-go rule is never met, or momentum and energy of the result do not close.
    /// </exception>
    public override DespinMotion Deploy(CancellationToken cancellation = default) => new(this);

    /// <summary>The same motion by numerical integration of Lagrange's equations, as a check.</summary>
    /// <param name="relativeTolerance">Relative error allowed a step, 1e-15 to 1e-3.</param>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is outside its range.</exception>
    /// <exception cref="ComputationRefusedException">
    /// The let-go rule is never met, the integration cannot go on, or momentum and energy do not close.
    /// </exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public IntegratedDespin Integrate(double relativeTolerance = 1e-13, CancellationToken cancellation = default) => relativeTolerance is >= 1e-15 and <= 1e-3
        ? new(this, relativeTolerance, cancellation)
        : throw new ArgumentOutOfRangeException(
            nameof(relativeTolerance), relativeTolerance, "The relative tolerance must be from 1e-15 to 1e-3.");

    /// <summary>How the final spin answers to errors of initial spin and spin inertia; to neither if a spin rate lets go at once.</summary>
    /// <param name="cancellation">Not looked at: a closed form is soon done.</param>
    /// <exception cref="ComputationRefusedException">
    /// As <see cref="Deploy"/>; or with a little more or less of either the let-go rule is never met.
    /// </exception>
    public override SpinSensitivity Sensitivity(CancellationToken cancellation = default)
    {
        DespinMotion motion = Deploy(cancellation);
        LetGoRule rule = LetGo.Si;

        // By a logarithmic step of a thousandth the slope errs by 1e-12.
        const double Step = 1e-3;
        return rule switch
        {
            { Kind: LetGoKind.SpinRate, IsImmediate: true } => default,

            // The final spin over the initial one does not depend on the initial one.
            { Kind: LetGoKind.CordAngle, IsImmediate: true } => new SpinSensitivity(
                motion.FinalSpin / Hub.Spin, SpinSensitivity.Slope(factor => CordsBy(factor).Spin(rule.Value), Step)),
            _ => new SpinSensitivity(
                SpinSensitivity.Slope(factor => FinalBy(factor, 1), Step), SpinSensitivity.Slope(factor => FinalBy(1, factor), Step)),
        };

        PlanarCords CordsBy(double inertia) => new(
            Hub.SpinInertia.ToSi() * inertia,
            Hub.Radius.Meters,
            WeightCount * WeightMass.ToSi(),
            WeightCount * CordLineDensity.ToSi(),
            CordLength.Meters);

        // In initial spins.
        double FinalBy(double spin, double inertia)
        {
            PlanarCords cords = CordsBy(inertia);
            return PlanarLetGo.Find(cords, rule, Hub.Spin.ToSi() * spin, 0, out double coordinate) == PlanarLetGo.Outcome.Found
                ? spin * cords.Spin(coordinate)
                : throw new ComputationRefusedException(
                    "With a little more or less initial spin or inertia the let-go rule is never met: there is no sensitivity to state. Let go earlier.");
        }
    }

    /// <summary>The ledger of a motion that was looked at in these states, the last at let-go.</summary>
    internal DeploymentLedger Close(IReadOnlyList<DespinState> states, double allowed)
    {
        PlanarCords cords = Cords;
        double square = cords.Radius * cords.Radius;
        return DeploymentLedger.InPlane(
            cords.Hub,
            cords.Weights * square,
            cords.Density * cords.Length * square,
            Hub.Spin.ToSi(),
            [.. states.Select(s => (s.AngularMomentum.KilogramSquareMetersPerSecond, s.Energy.Total.Joules))],
            states[^1].Spin.ToSi(),
            0,
            allowed);
    }

    /// <summary>Judges a line density; returns it in kg/m.</summary>
    internal static double Check(LinearDensity cordLineDensity) => Allowed.ZeroOrPositive(
        cordLineDensity.ToSi(),
        cordLineDensity,
        nameof(cordLineDensity),
        "Give the mass per length of one cord, or leave it out for a massless one.");
}
