using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>What ends a phase: the cord reaches a direction, or the let-go rule is met. Without units, see <see cref="PlanarCordEquations"/>.</summary>
internal struct PlanarCordEvents : IEventFunctions
{
    internal const int End = 0;
    internal const int LetGo = 1;

    /// <summary>The coordinate at which the phase ends.</summary>
    internal double Coordinate { get; set; }

    /// <summary>The let-go rule.</summary>
    internal LetGoRule Awaited { get; set; }

    public readonly int Count => 2;

    public readonly EventRule Rule(int index) => new(EventDirection.Rising, IsTerminal: true);

    public readonly void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        values[End] = state[PlanarCordEquations.Coordinate] - Coordinate;
        values[LetGo] = Awaited.Condition(time, state[PlanarCordEquations.Spin], state[PlanarCordEquations.Coordinate]);
    }
}
