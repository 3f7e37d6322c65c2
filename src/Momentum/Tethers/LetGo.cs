using System.Globalization;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>When the cords let go of the hub: at a cord angle once fully unwound, or at a spin rate.</summary>
/// <remarks>
/// The cord angle is measured at the cord's end point on the hub, from the tangent (0°, the direction in which the cord
/// has just come off) to the radial (90°, straight out) and on to the other tangent (180°), where the cord would begin to
/// wrap the hub the other way. Past radial the cord's pull spins the hub up again: by statics its moment about the spin
/// axis is the tension times the hub radius times the cosine of the cord angle. Immutable; equality is by value in SI units.
/// </remarks>
public sealed record LetGo
{
    private LetGo(Angle? cordAngle, RotationalSpeed? spin)
    {
        CordAngle = cordAngle;
        Spin = spin;
    }

    /// <summary>At the tangent: the moment the cords are fully unwound.</summary>
    public static LetGo Tangent { get; } = new(Angle.FromRadians(0), null);

    /// <summary>When the cords point straight out from the hub.</summary>
    public static LetGo Radial { get; } = new(Angle.FromRadians(Math.PI / 2), null);

    /// <summary>The cord angle at which the cords let go; null if a spin rate decides.</summary>
    public Angle? CordAngle { get; }

    /// <summary>The spin rate at which the cords let go; null if the cord angle decides.</summary>
    public RotationalSpeed? Spin { get; }

    /// <summary>At a stated cord angle.</summary>
    /// <param name="angle">Cord angle from tangent (0°) through radial (90°) up to the other tangent (180°).</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside 0° to 180°, or not a number.</exception>
    public static LetGo AtCordAngle(Angle angle)
    {
        double radians = angle.Radians;
        if (!(radians >= 0 && radians <= Math.PI))
        {
            throw new ArgumentOutOfRangeException(
                nameof(angle),
                Quoted.Text(angle),
                "The let-go cord angle is measured from tangent (0°) to radial (90°) and must be from 0° to 180°, where the " +
                "cord would wrap the hub the other way. To let go while unwinding give a spin rate instead.");
        }

        return new LetGo(Angle.FromRadians(radians), null);
    }

    /// <summary>When the spin has fallen to a stated rate for the first time, while unwinding or hinging.</summary>
    /// <param name="spin">Spin rate; positive in the sense of the initial spin, negative once the spin has reversed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not finite.</exception>
    public static LetGo AtSpin(RotationalSpeed spin)
    {
        if (!double.IsFinite(spin.ToSi()))
        {
            throw new ArgumentOutOfRangeException(nameof(spin), Quoted.Text(spin), "The let-go spin rate must be a finite rate.");
        }

        return new LetGo(null, RotationalSpeed.FromRadiansPerSecond(spin.ToSi()));
    }

    /// <summary>The rule in words, in the invariant culture.</summary>
    public override string ToString() =>
        this == Tangent ? "tangent" :
        this == Radial ? "radial" :
        CordAngle is { } angle ? string.Create(CultureInfo.InvariantCulture, $"cord angle {angle.Degrees:R} deg") :
        string.Create(CultureInfo.InvariantCulture, $"spin {Spin!.Value.ToSi():R} rad/s");
}
