namespace Momentum.Numerics;

/// <summary>
/// Functions of time and state whose zeros are events. Implement it as a struct, as <see cref="IOdeSystem"/>.
/// </summary>
public interface IEventFunctions
{
    /// <summary>Number of event functions; constant.</summary>
    int Count { get; }

    /// <summary>Which zeros of a function count, and what they do.</summary>
    /// <param name="index">The event function, from 0.</param>
    /// <returns>The rule of that function.</returns>
    EventRule Rule(int index);

    /// <summary>Evaluates all event functions.</summary>
    /// <param name="time">The time.</param>
    /// <param name="state">The state at that time.</param>
    /// <param name="values">Receives the values, <see cref="Count"/> long; they should change sign smoothly at the event.</param>
    void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values);
}
