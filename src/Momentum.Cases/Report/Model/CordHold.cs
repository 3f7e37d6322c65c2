namespace Momentum.Cases.Report.Model;

/// <summary>Whether and how a weight hangs on the hub; the script of the page knows the numbers.</summary>
internal enum CordHold
{
    /// <summary>The cord has left the hub.</summary>
    Gone = 0,

    /// <summary>By a taut cord.</summary>
    Taut = 1,

    /// <summary>By a slack cord.</summary>
    Slack = 2,
}
