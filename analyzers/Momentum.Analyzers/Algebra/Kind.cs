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

    /// <summary>A temperature above absolute zero, not a difference: it multiplies and divides as any number does.</summary>
    AbsoluteTemperature,

    /// <summary>A difference of two temperatures.</summary>
    TemperatureDifference,

    /// <summary>On a scale of its own, logarithmic or with an offset: no factor turns it into another unit.</summary>
    OwnScale,
}
