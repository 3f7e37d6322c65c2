namespace Momentum.Cases.Answers;

/// <summary>How a requirement came out.</summary>
internal enum Verdict
{
    Met,
    NotMet,

    /// <summary>Nothing computed so far says whether it holds; it does not count as met.</summary>
    NotJudged,
}
