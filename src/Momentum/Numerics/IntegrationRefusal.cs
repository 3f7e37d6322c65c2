namespace Momentum.Numerics;

/// <summary>Why an integration was refused.</summary>
public enum IntegrationRefusal
{
    /// <summary>No kind was stated.</summary>
    Unspecified,

    /// <summary>A derivative, a state or an event function was not a finite number, however short the step.</summary>
    NotFinite,

    /// <summary>The step that the tolerances ask for is below the resolution of the time.</summary>
    StepTooSmall,

    /// <summary>The allowed number of steps was used up.</summary>
    TooManySteps,
}
