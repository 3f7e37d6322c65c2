using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>
/// Mass properties between two times, such as those of a burning motor: mass and inertia change in proportion to time, and
/// what is lost leaves at the nozzle with the velocity that the body has there (what it leaves with beyond that is the
/// thrust, a load). Before and after they are constant.
/// </summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
/// <remarks>
/// The angular momentum that the flow carries away, m' e × (w × e) with e from the centre of mass to the nozzle and m' the
/// mass flow, damps the transverse rates: jet damping (W. T. Thomson, Introduction to Space Dynamics, 1961, chapter on
/// variable mass; from memory, not read). Whirl of the gas inside is left out: on a nozzle in the spin axis nothing takes
/// angular momentum about that axis away, so the spin rises as the inertia falls. The nozzle's place from the centre of mass is held at its mean over the burn.
/// Immutable, so safe to share between threads.
/// </remarks>
public sealed class Burn<TBody>
    where TBody : struct, IFrame
{
    private Burn(MassProperties<TBody> before, MassProperties<TBody> after, double start, double end, Vec exit)
    {
        Before = before;
        After = after;
        Start = start;
        End = end;
        Exit = exit;
    }

    /// <summary>Mass properties before the burn.</summary>
    public MassProperties<TBody> Before { get; }

    /// <summary>Mass properties after the burn.</summary>
    public MassProperties<TBody> After { get; }

    internal double Start { get; }

    internal double End { get; }

    internal Vec Exit { get; }

    /// <summary>Mass properties that change in proportion to time.</summary>
    /// <param name="before">Mass properties up to the start.</param>
    /// <param name="after">Mass properties from the end on; not more mass than before.</param>
    /// <param name="start">When the burn starts.</param>
    /// <param name="duration">How long it lasts; above zero.</param>
    /// <param name="nozzle">Where the exhaust leaves, in the body's frame.</param>
    /// <exception cref="ArgumentOutOfRangeException">The duration is not above zero, or the start not finite.</exception>
    /// <exception cref="ArgumentException">Mass properties are default, or the mass grows.</exception>
    public static Burn<TBody> Between(
        MassProperties<TBody> before, MassProperties<TBody> after, Duration start, Duration duration, Frames.Position<TBody> nozzle)
    {
        if (!(before.SiMass > 0.0 && after.SiMass > 0.0))
        {
            throw new ArgumentException("before and after must be bodies with mass, not default.", before.SiMass > 0.0 ? nameof(after) : nameof(before));
        }

        if (after.SiMass > before.SiMass)
        {
            throw new ArgumentException(FormattableString.Invariant($"after has {after.SiMass:G9} kg, more than the {before.SiMass:G9} kg before: a burn loses mass."), nameof(after));
        }

        double length = duration.Seconds;
        if (!(length > 0.0 && double.IsFinite(length)))
        {
            throw new ArgumentOutOfRangeException(nameof(duration), length, "A burn lasts a finite time above zero, in seconds.");
        }

        if (!double.IsFinite(start.Seconds))
        {
            throw new ArgumentOutOfRangeException(nameof(start), start.Seconds, "The start of a burn is a finite time, in seconds.");
        }

        Vector<Length, TBody> exit = ((nozzle - before.CentreOfMass) + (nozzle - after.CentreOfMass)) * 0.5;
        return new Burn<TBody>(before, after, start.Seconds, start.Seconds + length, exit.Si);
    }
}
