namespace Momentum.Numerics;

/// <summary>Which sign changes of an event function are events, in the direction of the integration.</summary>
public enum EventDirection
{
    /// <summary>Every change of sign.</summary>
    Either,

    /// <summary>From negative to positive.</summary>
    Rising,

    /// <summary>From positive to negative.</summary>
    Falling,
}
