using System.Globalization;
using Momentum.Quantities;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The spinning body to be de-spun: what the cords are wound on.</summary>
/// <remarks>
/// From here a design is completed with weights and cords (<see cref="Carrying"/>, <see cref="CarryingOnSprings"/>), or sized for
/// a wanted final spin (<see cref="SizeCordLength"/>, <see cref="SizeWeightMass"/>,
/// <see cref="SizeSpringCord(Mass, RotationalSpeed, LetGo, double, int, CancellationToken)"/>). Planar and symmetric: the spin axis is a principal
/// axis through the centre of mass, nothing wobbles, and evenly spaced equal weights let go together. Immutable; equality is by
/// value.
/// </remarks>
public sealed record DespinHub
{
    /// <summary>Describes the spinning body.</summary>
    /// <param name="spinInertia">Moment of inertia about the spin axis, without the weights and without the cords.</param>
    /// <param name="radius">Distance from the spin axis to the centreline of the wound cord.</param>
    /// <param name="spin">Spin rate before release; its sense is the positive one of everything that follows.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not positive, not finite, or beyond 1e±30 in SI units.</exception>
    public DespinHub(MassMomentOfInertia spinInertia, Length radius, RotationalSpeed spin)
    {
        Allowed.Positive(
            spinInertia.ToSi(),
            spinInertia,
            nameof(spinInertia),
            "Give the moment of inertia about the spin axis, without weights and cords.");
        Allowed.Positive(
            radius.Meters, radius, nameof(radius), "Give the distance from the spin axis to the centreline of the wound cord.");
        Allowed.Positive(
            spin.ToSi(),
            spin,
            nameof(spin),
            "A body that does not spin needs no de-spin; for one that spins the other way turn the axis round and give the rate as positive.");
        SpinInertia = spinInertia;
        Radius = radius;
        Spin = spin;
    }

    /// <summary>Moment of inertia about the spin axis, without the weights and without the cords.</summary>
    public MassMomentOfInertia SpinInertia { get; }

    /// <summary>Distance from the spin axis to the centreline of the wound cord.</summary>
    public Length Radius { get; }

    /// <summary>Spin rate before release, positive.</summary>
    public RotationalSpeed Spin { get; }

    /// <summary>Inertia, radius and spin, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"spin inertia {SpinInertia}, radius {Radius}, spin {Spin}");

    /// <summary>The design with stated weights and cords; its final spin follows from them.</summary>
    /// <param name="weightMass">Mass of each weight.</param>
    /// <param name="cordLength">Length of each cord, from the hub to the weight's centre of mass.</param>
    /// <param name="letGo">When the cords let go of the hub.</param>
    /// <param name="cordLineDensity">Mass per length of each cord; none means massless.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    public DespinDesign Carrying(
        Mass weightMass, Length cordLength, LetGo letGo, LinearDensity? cordLineDensity = null, int weights = 2) =>
        new(this, weights, weightMass, cordLength, cordLineDensity ?? LinearDensity.Zero, letGo);

    /// <summary>The design whose cord length leaves the wanted final spin.</summary>
    /// <remarks>
    /// Massless cords: closed form, L = (A - P r)/sqrt(m (A - P r²)) - R sin a, with r the final spin over the initial one, m the
    /// mass of all weights, A = I + m R², P = I + m R² cos² a (own derivation). Cords with mass: the shortest length that does it.
    /// </remarks>
    /// <param name="weightMass">Mass of each weight.</param>
    /// <param name="finalSpin">Spin after let-go; negative if reversed.</param>
    /// <param name="letGo">When the cords let go of the hub: at a cord angle.</param>
    /// <param name="cordLineDensity">Mass per length of each cord; none means massless.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    /// <exception cref="ComputationRefusedException">No cord length, or more than one, does it; the message says why.</exception>
    public DespinDesign SizeCordLength(
        Mass weightMass, RotationalSpeed finalSpin, LetGo letGo, LinearDensity? cordLineDensity = null, int weights = 2)
    {
        LinearDensity density = cordLineDensity ?? LinearDensity.Zero;
        double lineDensity = DespinDesign.Check(density);
        double mass = PlanarDesign.Check(weights, weightMass, letGo);
        double ratio = Sizing.Ratio(this, finalSpin, letGo);
        double length = Sizing.CordLength(
            SpinInertia.ToSi(),
            Radius.Meters,
            weights * mass,
            weights * lineDensity,
            ratio,
            letGo.Si.Value);
        return new(this, weights, weightMass, Length.FromMeters(length), density, letGo);
    }

    /// <summary>The design whose weight mass leaves the wanted final spin.</summary>
    /// <param name="cordLength">Length of each cord, from the hub to the weight's centre of mass.</param>
    /// <param name="finalSpin">Spin after let-go; negative if reversed.</param>
    /// <param name="letGo">When the cords let go of the hub: at a cord angle.</param>
    /// <param name="cordLineDensity">Mass per length of each cord; none means massless.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    /// <exception cref="ComputationRefusedException">No weight mass, or more than one, does it; the message says why.</exception>
    public DespinDesign SizeWeightMass(
        Length cordLength, RotationalSpeed finalSpin, LetGo letGo, LinearDensity? cordLineDensity = null, int weights = 2)
    {
        LinearDensity density = cordLineDensity ?? LinearDensity.Zero;
        double lineDensity = DespinDesign.Check(density);
        double length = PlanarDesign.Check(weights, cordLength, letGo);
        double ratio = Sizing.Ratio(this, finalSpin, letGo);
        double all = Sizing.WeightMass(
            SpinInertia.ToSi(),
            Radius.Meters,
            length,
            weights * lineDensity,
            ratio,
            letGo.Si.Value);
        return new(this, weights, Mass.FromKilograms(all / weights), cordLength, density, letGo);
    }

    /// <summary>Cord length against weight mass for the same final spin and let-go: one sized design for each mass.</summary>
    /// <param name="weightMasses">Masses of each weight to try.</param>
    /// <param name="finalSpin">Spin after let-go; negative if reversed.</param>
    /// <param name="letGo">When the cords let go of the hub: at a cord angle.</param>
    /// <param name="cordLineDensity">Mass per length of each cord; none means massless.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <returns>The designs, in the order of the masses.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    /// <exception cref="ComputationRefusedException">For one of the masses no cord length does it.</exception>
    public IReadOnlyList<DespinDesign> TradeCurve(
        IEnumerable<Mass> weightMasses,
        RotationalSpeed finalSpin,
        LetGo letGo,
        LinearDensity? cordLineDensity = null,
        int weights = 2)
    {
        ArgumentNullException.ThrowIfNull(weightMasses);
        return [.. weightMasses.Select(mass => SizeCordLength(mass, finalSpin, letGo, cordLineDensity, weights))];
    }

    /// <summary>The design with stated weights and spring cords; its final spin follows from them.</summary>
    /// <param name="weightMass">Mass of each weight.</param>
    /// <param name="cordLength">Unstretched length of each cord, spring and all, from the hub to the weight's centre of mass.</param>
    /// <param name="springRate">Tension of each cord by its stretch: of the spring in it, or E·A over its length.</param>
    /// <param name="letGo">When the cords let go of the hub.</param>
    /// <param name="dampingRatio">Damping of the stretch, as a fraction of the critical damping of the weight on its cord, 0 to 10.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    public SpringCordDesign CarryingOnSprings(
        Mass weightMass, Length cordLength, ForcePerLength springRate, LetGo letGo, double dampingRatio = 0, int weights = 2) =>
        new(this, weights, weightMass, cordLength, springRate, dampingRatio, letGo);

    /// <summary>
    /// The spring-cord design for a weight mass: the cord length and spring rate that leave the wanted final spin, and leave it
    /// whatever the initial spin, to first order.
    /// </summary>
    /// <remarks>
    /// <para>More initial spin stretches the cords more, and they take more away. Found on the integrated equations of motion,
    /// nearest to the closed form that holds where the stretch is slow and the hub's inertia I much larger than that of the stowed
    /// weights: with r the final over the initial spin w0, and m the mass and k the spring rate of all weights and cords,
    /// m L² = I (1 - r)³ and k = m w0²/r at the tangent (own derivation, in the manner of J. V. Fedor, NASA TN D-1676, 1963). The
    /// stretch at let-go is then the share r of the free length.</para>
    /// <para>It forgives spin-up errors, not errors of inertia: of those it takes only the share r/(1 + r) away
    /// (<see cref="SpringCordDesign.Sensitivity"/> states both). Only for spin left in the sense of the initial one: for complete
    /// de-spin cords without stretch do as well.</para>
    /// </remarks>
    /// <param name="weightMass">Mass of each weight.</param>
    /// <param name="finalSpin">Spin after let-go, at least a thousandth of the initial spin and below it.</param>
    /// <param name="letGo">When the cords let go of the hub: at a cord angle.</param>
    /// <param name="dampingRatio">Damping of the stretch, as a fraction of the critical damping of the weight on its cord, 0 to 10.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    /// <exception cref="ComputationRefusedException">There is no such design, or none was found; the message says which.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public SpringCordDesign SizeSpringCord(
        Mass weightMass, RotationalSpeed finalSpin, LetGo letGo, double dampingRatio = 0, int weights = 2, CancellationToken cancellation = default) =>
        SpringCordDesign.Size(this, weights, weightMass, null, dampingRatio, finalSpin, letGo, cancellation);

    /// <summary>The spring-cord design for a cord length: the weight mass and spring rate, see the other overload.</summary>
    /// <param name="cordLength">Unstretched length of each cord, spring and all, from the hub to the weight's centre of mass.</param>
    /// <param name="finalSpin">Spin after let-go, at least a thousandth of the initial spin and below it.</param>
    /// <param name="letGo">When the cords let go of the hub: at a cord angle.</param>
    /// <param name="dampingRatio">Damping of the stretch, as a fraction of the critical damping of the weight on its cord, 0 to 10.</param>
    /// <param name="weights">How many weights, each on its own cord, evenly spaced.</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside what its message says is allowed.</exception>
    /// <exception cref="ComputationRefusedException">There is no such design, or none was found; the message says which.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public SpringCordDesign SizeSpringCord(
        Length cordLength, RotationalSpeed finalSpin, LetGo letGo, double dampingRatio = 0, int weights = 2, CancellationToken cancellation = default) =>
        SpringCordDesign.Size(this, weights, null, cordLength, dampingRatio, finalSpin, letGo, cancellation);
}
