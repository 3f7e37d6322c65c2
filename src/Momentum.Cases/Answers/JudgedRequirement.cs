using Momentum.Dispersion;

namespace Momentum.Cases.Answers;

/// <summary>A requirement of the case and how it came out.</summary>
/// <param name="Key">Its key under [require].</param>
/// <param name="Name">What it limits, in the trade's words.</param>
/// <param name="Limit">The limit as written.</param>
/// <param name="Bound">The bound in SI.</param>
/// <param name="Value">What was computed, in SI; null if nothing was.</param>
/// <param name="SiUnit">SI unit of both; empty for a ratio.</param>
/// <param name="Shown">The computed value in a unit that a reader likes; null if there is none.</param>
/// <param name="Unit">The unit of <paramref name="Shown"/>.</param>
/// <param name="Verdict">How it came out.</param>
/// <param name="Note">On what it was judged, or why it was not.</param>
public sealed record JudgedRequirement(
    string Key, string Name, string Limit, double Bound, double? Value, string SiUnit, double? Shown, string Unit, Verdict Verdict, string Note)
{
    /// <summary>What the cases say of it; null if it was not put to any.</summary>
    public JudgedShare? Share { get; init; }
}
