using System.Globalization;
using System.Numerics;

namespace Momentum.Numerics;

/// <summary>An event that was found within a step. Equality is by both members; the default is function 0 at time 0.</summary>
/// <param name="Index">The event function, from 0.</param>
/// <param name="Time">When it happened, in the integrator's unit of time.</param>
public readonly record struct LocatedEvent(int Index, double Time) : IEqualityOperators<LocatedEvent, LocatedEvent, bool>
{
    /// <summary>The function and the time, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"event {Index} at {Time}");
}
