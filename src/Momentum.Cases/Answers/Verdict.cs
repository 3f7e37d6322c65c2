namespace Momentum.Cases.Answers;

/// <summary>How a requirement came out.</summary>
public enum Verdict
{
    /// <summary>The cases show that the required share of all cases meets it.</summary>
    Met,

    /// <summary>The cases show that less than the required share meets it; or it is not even met at nominal.</summary>
    NotMet,

    /// <summary>The cases show neither, or it cannot be judged; it does not count as met.</summary>
    NotShown,

    /// <summary>The nominal design meets it, and the case states no tolerance.</summary>
    MetAtNominal,
}
