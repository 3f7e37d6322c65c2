using System.Globalization;
using System.Numerics;

namespace Momentum.Numerics;

/// <summary>
/// Limits on the steps of an integration. Equality is by all members. <c>default</c> has no maximum step, chooses the
/// first step itself, allows a million steps and looks at event functions four times a step.
/// </summary>
public readonly record struct StepLimits : IEqualityOperators<StepLimits, StepLimits, bool>
{
    private const int DefaultMaximumSteps = 1_000_000;
    private const int DefaultEventSamples = 4;

    private readonly double _maximumStep;
    private readonly double _firstStep;
    private readonly int _maximumSteps;
    private readonly int _eventSamples;

    /// <summary>Longest step, positive, in the integrator's unit of time; infinite unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not positive.</exception>
    public double MaximumStep
    {
        get { return _maximumStep > 0.0 ? _maximumStep : double.PositiveInfinity; }
        init { _maximumStep = value > 0.0 ? value : throw new ArgumentOutOfRangeException(nameof(MaximumStep), value, "The longest step is positive."); }
    }

    /// <summary>First step to try, positive, in the integrator's unit of time; 0, the default, lets the integrator choose.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public double FirstStep
    {
        get { return _firstStep; }
        init { _firstStep = value >= 0.0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(nameof(FirstStep), value, "The first step is finite and positive, or 0 to let the integrator choose."); }
    }

    /// <summary>Number of steps, accepted and rejected, after which the integration is refused; counted from its start.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not positive.</exception>
    public int MaximumSteps
    {
        get { return _maximumSteps > 0 ? _maximumSteps : DefaultMaximumSteps; }
        init { _maximumSteps = value > 0 ? value : throw new ArgumentOutOfRangeException(nameof(MaximumSteps), value, "The number of steps is positive."); }
    }

    /// <summary>
    /// How often the event functions are looked at within one step, from 1 (its end only) to 64. From 2 on, a function that
    /// seems to turn near zero between looks, by the parabola through three of them, is looked at there too, so that a pair of
    /// zeros between two looks is seen as long as a parabola resembles the function; more looks see wilder ones, and cost more.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside 1 to 64.</exception>
    public int EventSamples
    {
        get { return _eventSamples > 0 ? _eventSamples : DefaultEventSamples; }
        init { _eventSamples = value is >= 1 and <= 64 ? value : throw new ArgumentOutOfRangeException(nameof(EventSamples), value, "The number of looks at the event functions in a step is from 1 to 64."); }
    }

    /// <summary>The four limits, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"longest step {MaximumStep}, first step {FirstStep}, at most {MaximumSteps} steps, {EventSamples} looks a step");
}
