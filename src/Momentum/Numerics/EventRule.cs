using System.Numerics;

namespace Momentum.Numerics;

/// <summary>
/// What the integrator does about a zero of an event function. The default is either direction, not terminal.
/// Equality is by both members.
/// </summary>
/// <param name="Direction">Which sign changes count.</param>
/// <param name="IsTerminal">True if the step ends at the event.</param>
/// <param name="StartsBefore">
/// True if the function stands before its event at the start, whatever rounding makes of a value near zero there: the event
/// is found though the function is past zero again at the first look, and lies at the start if it never was before zero.
/// False if a zero at the start is an event left behind. Of no effect if either direction counts.
/// </param>
public readonly record struct EventRule(EventDirection Direction, bool IsTerminal, bool StartsBefore = false)
    : IEqualityOperators<EventRule, EventRule, bool>;
