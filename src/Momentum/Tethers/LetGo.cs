using System.Globalization;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>
/// The let-go rule: what makes a cord leave the hub. At a cord angle, a spin rate or a time, or never; with a delay if wanted.
/// </summary>
/// <remarks>
/// <para>The cord angle is measured at the cord's end point on the hub, seen along the spin axis, from the tangent (0°, the
/// direction in which the cord has just come off) to the radial (90°, straight out) and on to the other tangent (180°), where the
/// cord would begin to wrap the hub the other way. A negative angle is before the tangent: the cord still unwinds, and its tangent
/// point has that much of the hub's circumference still to run. Past radial the cord's pull spins the hub up again: by statics its
/// moment about the spin axis is the tension times the hub radius times the cosine of the cord angle.</para>
/// <para>The same rule serves the planar design, spring cords, the deployment in three dimensions and ensembles of them. A solution
/// that cannot carry a rule refuses it and says why. Closed: the kinds are the nested types. Immutable; equality is by value in SI
/// units.</para>
/// </remarks>
public abstract record LetGo
{
    private LetGo(LetGoKind kind, double value, double delay) => Si = new LetGoRule(kind, value, delay);

    /// <summary>The moment the cord is fully unwound.</summary>
    public static LetGo Tangent { get; } = new CordAngleRule(0, 0);

    /// <summary>When the cord points straight out from the hub.</summary>
    public static LetGo Radial { get; } = new CordAngleRule(Math.PI / 2, 0);

    /// <summary>The cord stays on the hub.</summary>
    public static LetGo Never { get; } = new NeverRule();

    /// <summary>How long after its condition is met the rule is carried out.</summary>
    public Duration Delay => Duration.FromSeconds(Si.Delay);

    /// <summary>The rule in bare SI numbers.</summary>
    internal LetGoRule Si { get; }

    /// <summary>At a stated cord angle.</summary>
    /// <param name="angle">
    /// Cord angle from tangent (0°) through radial (90°) up to the other tangent (180°); negative before the tangent, no further
    /// back than where the cord starts, which is checked when it is deployed.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is above 180°, or not finite.</exception>
    public static LetGo AtCordAngle(Angle angle) => angle.Radians is > double.NegativeInfinity and <= Math.PI
        ? new CordAngleRule(angle.Radians, 0)
        : throw new ArgumentOutOfRangeException(
            nameof(angle),
            Quoted.Text(angle),
            "The let-go cord angle is measured from tangent (0°) to radial (90°) and must be at most 180°, where the cord would wrap the " +
            "hub the other way; negative is before the tangent.");

    /// <summary>When the spin has fallen to a stated rate for the first time, while unwinding or hinging.</summary>
    /// <param name="spin">Spin rate; positive in the sense of the initial spin, negative once the spin has reversed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not finite.</exception>
    public static LetGo AtSpin(RotationalSpeed spin) => double.IsFinite(spin.ToSi())
        ? new SpinRule(spin.ToSi(), 0)
        : throw new ArgumentOutOfRangeException(nameof(spin), Quoted.Text(spin), "The let-go spin rate must be a finite rate.");

    /// <summary>At a time, wherever the cord is then; one that still unwinds is cut at its tangent point.</summary>
    /// <param name="time">From the release of the weights, zero or later.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not finite.</exception>
    public static LetGo AtTime(Duration time) => time.Seconds >= 0 && double.IsFinite(time.Seconds)
        ? new TimeRule(time.Seconds)
        : throw new ArgumentOutOfRangeException(nameof(time), Quoted.Text(time), "The time of let-go must be zero or later, and finite.");

    /// <summary>The same rule, carried out some time after its condition is met: the latency of a sensor or a cutter.</summary>
    /// <param name="by">From the condition to the let-go, added to what delay the rule has already; zero or longer.</param>
    /// <exception cref="ArgumentOutOfRangeException">The delay is negative or not finite.</exception>
    public LetGo Delayed(Duration by) => by.Seconds >= 0 && double.IsFinite(by.Seconds)
        ? WithDelay(Si.Delay + by.Seconds)
        : throw new ArgumentOutOfRangeException(nameof(by), Quoted.Text(by), "The delay must be zero or longer, and finite.");

    /// <summary>The rule in words, in the invariant culture.</summary>
    public sealed override string ToString() =>
        Si.Delay > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Condition}, {Si.Delay:R} s late") : Condition;

    /// <summary>The same rule with another delay in seconds.</summary>
    internal abstract LetGo WithDelay(double delay);

    /// <summary>The rule of a cord that misses the angle at which it is to let go; past the other tangent it never does.</summary>
    /// <param name="by">Late is positive, rad.</param>
    /// <param name="earliest">The first angle at which it can let go.</param>
    internal virtual LetGo Missed(double by, double earliest) => this;

    private protected abstract string Condition { get; }

    /// <summary>At a cord angle.</summary>
    public sealed record CordAngleRule : LetGo
    {
        internal CordAngleRule(double radians, double delay)
            : base(LetGoKind.CordAngle, radians, delay)
        {
        }

        /// <summary>The cord angle from tangent.</summary>
        public Angle CordAngle => Angle.FromRadians(Si.Value);

        private protected override string Condition =>
            Si.Value == 0 ? "tangent" :
            Si.Value == Math.PI / 2 ? "radial" :
            string.Create(CultureInfo.InvariantCulture, $"cord angle {CordAngle.Degrees:R} deg");

        internal override LetGo WithDelay(double delay) => new CordAngleRule(Si.Value, delay);

        internal override LetGo Missed(double by, double earliest)
        {
            double angle = Math.Max(Si.Value + by, earliest);
            return angle <= Math.PI ? new CordAngleRule(angle, Si.Delay) : Never;
        }
    }

    /// <summary>At a spin rate.</summary>
    public sealed record SpinRule : LetGo
    {
        internal SpinRule(double spin, double delay)
            : base(LetGoKind.SpinRate, spin, delay)
        {
        }

        /// <summary>The spin rate; positive in the sense of the initial spin.</summary>
        public RotationalSpeed Spin => RotationalSpeed.FromRadiansPerSecond(Si.Value);

        private protected override string Condition => string.Create(CultureInfo.InvariantCulture, $"spin {Si.Value:R} rad/s");

        internal override LetGo WithDelay(double delay) => new SpinRule(Si.Value, delay);
    }

    /// <summary>At a time; a delay is part of it.</summary>
    public sealed record TimeRule : LetGo
    {
        internal TimeRule(double seconds)
            : base(LetGoKind.Time, seconds, 0)
        {
        }

        /// <summary>The time from the release of the weights.</summary>
        public Duration Time => Duration.FromSeconds(Si.Value);

        private protected override string Condition => string.Create(CultureInfo.InvariantCulture, $"time {Si.Value:R} s");

        internal override LetGo WithDelay(double delay) => new TimeRule(Si.Value + delay);
    }

    /// <summary>Never: the cord stays on the hub.</summary>
    public sealed record NeverRule : LetGo
    {
        internal NeverRule()
            : base(LetGoKind.Never, 0, 0)
        {
        }

        private protected override string Condition => "never";

        internal override LetGo WithDelay(double delay) => this;
    }
}
