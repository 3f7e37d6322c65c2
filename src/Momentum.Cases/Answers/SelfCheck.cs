namespace Momentum.Cases.Answers;

/// <summary>One check of the computation on itself.</summary>
/// <param name="Name">What was compared.</param>
/// <param name="Departure">How far apart the two are; a ratio.</param>
/// <param name="Allowed">How far apart they may be.</param>
internal sealed record SelfCheck(string Name, double Departure, double Allowed)
{
    /// <summary>Whether the departure is within what is allowed.</summary>
    public bool Passed => Departure <= Allowed;
}
