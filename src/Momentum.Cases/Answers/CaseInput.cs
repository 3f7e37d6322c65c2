using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;

namespace Momentum.Cases.Answers;

/// <summary>An uncertain input of a case.</summary>
/// <param name="Path">The key that it stands at, such as <c>vehicle.inertia.zz</c>; or in words what no key states.</param>
/// <param name="Si">The nominal value, SI.</param>
/// <param name="SiUnit">Its SI unit; empty for a ratio.</param>
/// <param name="Tolerance">How it scatters.</param>
/// <param name="Text">The value and tolerance as written; empty if no key states it.</param>
/// <param name="First">Place of its first level among those of a case.</param>
/// <param name="Levels">How many levels it takes: one that all share, and one of each weight or cord, as far as stated.</param>
internal sealed record CaseInput(string Path, double Si, string SiUnit, Tolerance Tolerance, string Text, int First, int Levels)
{
    /// <summary>The section that states it; null if none does.</summary>
    public Section? Section { get; init; }

    /// <summary>The property of that section.</summary>
    public string? Property { get; init; }

    /// <summary>Number of the correlated group that it is in; null if it is in none.</summary>
    public int? Group { get; init; }
}
