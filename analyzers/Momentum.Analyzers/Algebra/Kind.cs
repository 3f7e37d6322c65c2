namespace Momentum.Analyzers.Algebra;

/// <summary>What a dimension does not tell: quantities of one dimension that are not the same thing.</summary>
internal enum Kind
{
    /// <summary>Nothing is known beyond the dimension.</summary>
    Unspecified,

    /// <summary>A moment of force.</summary>
    Torque,

    /// <summary>Work or energy.</summary>
    Energy,

    /// <summary>A temperature on the Celsius scale, not a difference.</summary>
    CelsiusPoint,

    /// <summary>A temperature on the Fahrenheit scale, not a difference.</summary>
    FahrenheitPoint,
}
