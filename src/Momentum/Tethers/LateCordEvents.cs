using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>What ends a phase of the one cord that is left: it reaches a direction.</summary>
internal struct LateCordEvents : IEventFunctions
{
    /// <summary>The coordinate at which the phase ends.</summary>
    internal double Coordinate { get; set; }

    public readonly int Count => 1;

    public readonly EventRule Rule(int index) => new(EventDirection.Rising, IsTerminal: true);

    public readonly void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values) => values[0] = state[0] - Coordinate;
}
