using System.Numerics;

namespace Momentum.Numerics;

/// <summary>The empty set of event functions. All values are equal, <c>default</c> too.</summary>
public readonly record struct NoEvents : IEventFunctions, IEqualityOperators<NoEvents, NoEvents, bool>
{
    /// <inheritdoc/>
    public int Count
    {
        get { return 0; }
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">Always: there is no event function.</exception>
    public EventRule Rule(int index)
    {
        throw new ArgumentOutOfRangeException(nameof(index), index, "There are no event functions.");
    }

    /// <inheritdoc/>
    public void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
    }
}
