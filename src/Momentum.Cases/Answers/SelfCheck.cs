namespace Momentum.Cases.Answers;

/// <summary>One check of the computation on itself.</summary>
/// <param name="Name">What was compared.</param>
/// <param name="Departure">How far apart the two are; a ratio. NaN if that could not be found.</param>
/// <param name="Allowed">How far apart they may be.</param>
internal sealed record SelfCheck(string Name, double Departure, double Allowed)
{
    /// <summary>Whether the departure is within what is allowed.</summary>
    public bool Passed => Departure <= Allowed;

    /// <summary>A check that could not be made: no more to be trusted than one that failed.</summary>
    public static SelfCheck NotMade(string name, string why) => new($"{name}: it could not be made, for {why}", double.NaN, 0);

    /// <inheritdoc/>
    public override string ToString() => double.IsNaN(Departure) ? Name : FormattableString.Invariant($"{Name}: {Departure:G3}, and at most {Allowed:G3} is allowed");
}
