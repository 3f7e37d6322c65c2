namespace Momentum.Cases.Report.Model;

/// <summary>How a requirement came out.</summary>
internal enum Outcome
{
    /// <summary>The computed value lies within the limit.</summary>
    Met,

    /// <summary>The computed value lies outside the limit.</summary>
    NotMet,

    /// <summary>Nothing computed so far says whether the limit holds.</summary>
    NotJudged,
}
