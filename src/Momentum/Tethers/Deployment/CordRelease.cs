using System.Globalization;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>What makes one cord let go of the hub. Immutable; equality is by value.</summary>
public sealed record CordRelease
{
    private CordRelease(LetGoKind kind, double value, double latency)
    {
        Kind = kind;
        Value = value;
        Latency = latency;
    }

    /// <summary>The cord stays on the hub.</summary>
    public static CordRelease Never { get; } = new(LetGoKind.Never, 0, 0);

    /// <summary>The moment the cord is fully unwound.</summary>
    public static CordRelease Tangent { get; } = new(LetGoKind.CordAngle, 0, 0);

    /// <summary>When the cord points straight out from the drum's axis.</summary>
    public static CordRelease Radial { get; } = new(LetGoKind.CordAngle, Math.PI / 2, 0);

    internal LetGoKind Kind { get; }

    internal double Value { get; }

    internal double Latency { get; }

    /// <summary>
    /// At an angle of the hinged cord, seen along the axis and measured at its end on the hub from the tangent (0°) through
    /// radial (90°) to the other tangent (180°). A negative angle is before the tangent: the cord still unwinds, and its
    /// tangent point has that much of the drum's circumference still to run.
    /// </summary>
    /// <param name="angle">Up to 180°; a negative one no further back than where the cord starts, which is checked when it is deployed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is above 180°, or not finite.</exception>
    public static CordRelease AtCordAngle(Angle angle) => angle.Radians is > double.NegativeInfinity and <= Math.PI
        ? new(LetGoKind.CordAngle, angle.Radians, 0)
        : throw new ArgumentOutOfRangeException(
            nameof(angle), Quoted.Text(angle), "The cord angle at release must be finite and at most 180° (the other tangent); negative is before the tangent (0°).");

    /// <summary>At a time, wherever the cord is then; one still on the drum is cut at its tangent point.</summary>
    /// <param name="time">From the start of the deployment, zero or later.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not finite.</exception>
    public static CordRelease AtTime(Duration time) => time.Seconds >= 0 && double.IsFinite(time.Seconds)
        ? new(LetGoKind.Time, time.Seconds, 0)
        : throw new ArgumentOutOfRangeException(nameof(time), Quoted.Text(time), "The time of release must be zero or later, and finite.");

    /// <summary>When a sensor sees the spin about the drums' axis fall to a rate, and some time after that.</summary>
    /// <param name="spin">Positive in the sense of the initial spin; zero or negative to wait for the reversed spin.</param>
    /// <param name="latency">From the crossing to the release, zero or longer.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not finite, or the latency negative or not finite.</exception>
    public static CordRelease AtSensedSpin(RotationalSpeed spin, Duration latency)
    {
        Finite.Require(spin.ToSi(), nameof(spin));
        return latency.Seconds >= 0 && double.IsFinite(latency.Seconds)
            ? new(LetGoKind.SpinRate, spin.ToSi(), latency.Seconds)
            : throw new ArgumentOutOfRangeException(nameof(latency), Quoted.Text(latency), "The latency must be zero or longer, and finite.");
    }

    /// <summary>The same rule, carried out some time after its condition is met.</summary>
    /// <param name="by">From the condition to the release, added to what delay the rule has already; zero or longer.</param>
    /// <exception cref="ArgumentOutOfRangeException">The delay is negative or not finite.</exception>
    public CordRelease Delayed(Duration by)
    {
        double delay = by.Seconds >= 0 && double.IsFinite(by.Seconds)
            ? by.Seconds
            : throw new ArgumentOutOfRangeException(nameof(by), Quoted.Text(by), "The delay must be zero or longer, and finite.");
        return Kind switch
        {
            LetGoKind.Never => this,
            LetGoKind.Time => new(Kind, Value + delay, 0),
            _ => new(Kind, Value, Latency + delay),
        };
    }

    /// <summary>The same rule with another latency in seconds, where a latency means something.</summary>
    internal CordRelease WithLatency(double latency) =>
        Kind == LetGoKind.CordAngle ? new(Kind, Value, latency) : this;

    /// <summary>The rule in words, in the invariant culture.</summary>
    public override string ToString() => Kind switch
    {
        LetGoKind.Never => "never",
        LetGoKind.CordAngle when Latency > 0 => string.Create(
            CultureInfo.InvariantCulture, $"cord angle {Value * 180 / Math.PI:G6} deg, latency {Latency:G6} s"),
        LetGoKind.CordAngle => string.Create(CultureInfo.InvariantCulture, $"cord angle {Value * 180 / Math.PI:G6} deg"),
        LetGoKind.Time => string.Create(CultureInfo.InvariantCulture, $"time {Value:G6} s"),
        _ => string.Create(CultureInfo.InvariantCulture, $"sensed spin {Value:G6} rad/s, latency {Latency:G6} s"),
    };
}
