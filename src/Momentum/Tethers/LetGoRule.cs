namespace Momentum.Tethers;

/// <summary>A let-go rule as bare SI numbers: what every solution of the motion reads.</summary>
/// <param name="Kind">What it waits for.</param>
/// <param name="Value">Cord angle (rad), spin rate (rad/s) or time (s), by its kind.</param>
/// <param name="Delay">From the condition to the let-go, s.</param>
internal readonly record struct LetGoRule(LetGoKind Kind, double Value, double Delay)
{
    /// <summary>Whether nothing is waited for once the condition is met.</summary>
    internal bool IsImmediate => Delay == 0;

    /// <summary>The rule for a motion without units: rates over the initial spin, times in its inverse.</summary>
    /// <param name="initialSpin">Initial spin, rad/s.</param>
    internal LetGoRule In(double initialSpin) => Kind switch
    {
        LetGoKind.SpinRate => new(Kind, Value / initialSpin, Delay * initialSpin),
        LetGoKind.Time => new(Kind, Value * initialSpin, Delay * initialSpin),
        _ => new(Kind, Value, Delay * initialSpin),
    };

    /// <summary>What rises through zero when the condition is met.</summary>
    /// <param name="time">Since release.</param>
    /// <param name="spin">In the sense of the initial spin.</param>
    /// <param name="angle">Cord angle from the tangent; while unwinding minus the angle that is still wound.</param>
    internal double Condition(double time, double spin, double angle) => Kind switch
    {
        LetGoKind.CordAngle => angle - Value,
        LetGoKind.SpinRate => Value - spin,
        LetGoKind.Time => time - Value,
        _ => -1,
    };

    /// <summary>What is left of the rule once its condition is met: the clock.</summary>
    /// <param name="met">When it was met.</param>
    internal LetGoRule After(double met) => new(LetGoKind.Time, met + Delay, 0);
}
