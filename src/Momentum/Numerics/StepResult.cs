namespace Momentum.Numerics;

/// <summary>How a step, or a run of steps, ended.</summary>
public enum StepResult
{
    /// <summary>A step was made; the end time is not reached yet.</summary>
    StepTaken,

    /// <summary>The end time is reached, exactly.</summary>
    EndReached,

    /// <summary>The step ends at a terminal event; time and state are those of the event.</summary>
    EventReached,
}
