namespace Momentum.Cases.Report.Model;

/// <summary>The report in three words.</summary>
internal enum Verdict
{
    /// <summary>Every stated requirement is met and every check passed.</summary>
    Met,

    /// <summary>At least one requirement is not met.</summary>
    NotMet,

    /// <summary>None fails, but at least one requirement could not be judged.</summary>
    NotAllShown,

    /// <summary>The case states no requirement.</summary>
    NothingRequired,

    /// <summary>A check of the computation failed: no figure of the report may be used.</summary>
    CheckFailed,
}
