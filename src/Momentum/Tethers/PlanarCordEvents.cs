using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>What ends a phase: the cord reaches a direction, or the spin has fallen to a rate.</summary>
internal struct PlanarCordEvents : IEventFunctions
{
    /// <summary>Where in the state the coordinate stands.</summary>
    internal int Place { get; init; }

    /// <summary>The coordinate at which the phase ends.</summary>
    internal double Coordinate { get; set; }

    /// <summary>The spin over initial spin at which it ends; minus infinity if none.</summary>
    internal double Spin { get; set; }

    public readonly int Count => double.IsNegativeInfinity(Spin) ? 1 : 2;

    public readonly EventRule Rule(int index) =>
        new(index == 0 ? EventDirection.Rising : EventDirection.Falling, IsTerminal: true);

    public readonly void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        values[0] = state[Place] - Coordinate;
        if (values.Length > 1)
        {
            values[1] = state[1] - Spin;
        }
    }
}
