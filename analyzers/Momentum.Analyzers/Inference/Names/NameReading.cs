using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>The unit that a name states, and how plainly.</summary>
internal sealed class NameReading(Unit unit, Evidence evidence)
{
    internal Unit Unit { get; } = unit;

    /// <summary><see cref="Inference.Evidence.Named"/> or <see cref="Inference.Evidence.Guessed"/>.</summary>
    internal Evidence Evidence { get; } = evidence;
}
