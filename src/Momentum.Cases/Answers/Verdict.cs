namespace Momentum.Cases.Answers;

/// <summary>How a requirement came out.</summary>
public enum Verdict
{
    /// <summary>The computed value lies within the limit.</summary>
    Met,

    /// <summary>The computed value lies outside the limit.</summary>
    NotMet,

    /// <summary>Nothing computed so far says whether it holds; it does not count as met.</summary>
    NotJudged,
}
