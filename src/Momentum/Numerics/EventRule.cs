using System.Numerics;

namespace Momentum.Numerics;

/// <summary>
/// What the integrator does about a zero of an event function. The default is either direction, not terminal.
/// Equality is by both members.
/// </summary>
/// <param name="Direction">Which sign changes count.</param>
/// <param name="IsTerminal">True if the step ends at the event.</param>
public readonly record struct EventRule(EventDirection Direction, bool IsTerminal) : IEqualityOperators<EventRule, EventRule, bool>;
