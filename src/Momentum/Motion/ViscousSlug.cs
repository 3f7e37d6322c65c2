using System.Globalization;
using System.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>
/// An internal damper: a sphere that turns inside the body about the body's centre of mass, coupled by a viscous torque in
/// proportion to the difference of the angular velocities. It takes energy and no momentum, which makes it the simplest
/// honest model of what fuel, cables and dampers do to a spinning body. Equality is by both members; <c>default</c> is none.
/// </summary>
/// <remarks>The model of a spherical slug is common practice in attitude dynamics; no source was read. Its mass counts with the body's.</remarks>
public readonly record struct ViscousSlug : IEqualityOperators<ViscousSlug, ViscousSlug, bool>
{
    private ViscousSlug(double inertia, double relaxation)
    {
        SiInertia = inertia;
        SiRelaxation = relaxation;
    }

    internal double SiInertia { get; }

    internal double SiRelaxation { get; }

    /// <summary>Inertia and relaxation time, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"slug of {SiInertia} kg·m², relaxing in {SiRelaxation} s");

    /// <summary>A slug.</summary>
    /// <param name="inertia">Its moment of inertia about any axis, above zero; not part of the body's own tensor.</param>
    /// <param name="relaxation">The time in which a difference of the rates falls by e if the body is held: inertia over damping coefficient; above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite and above zero.</exception>
    public static ViscousSlug Of(MassMomentOfInertia inertia, Duration relaxation)
    {
        double moment = inertia.ToSi();
        double time = relaxation.Seconds;
        return !(moment > 0.0 && double.IsFinite(moment)) ? throw new ArgumentOutOfRangeException(nameof(inertia), moment, "A slug's inertia is finite and above zero, in kg·m².")
            : !(time > 0.0 && double.IsFinite(time)) ? throw new ArgumentOutOfRangeException(nameof(relaxation), time, "A slug's relaxation time is finite and above zero, in seconds.")
            : new ViscousSlug(moment, time);
    }
}
