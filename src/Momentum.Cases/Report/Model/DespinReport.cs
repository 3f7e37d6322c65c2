using Momentum.Cases.Answers;

namespace Momentum.Cases.Report.Model;

/// <summary>Everything a report shows. Parts left empty or null are left out of the page, or said to be absent.</summary>
internal sealed record DespinReport
{
    /// <summary>Title from the case file. It is shown as text, whatever it contains.</summary>
    public required string Title { get; init; }

    /// <summary>One sentence with the answer.</summary>
    public required string Summary { get; init; }

    /// <summary>Where the report comes from.</summary>
    public required CaseIdentity Case { get; init; }

    /// <summary>The answer table, most important first.</summary>
    public required IReadOnlyList<AnswerFigure> Answers { get; init; }

    /// <summary>Figures that belong to the record but not on the sheet that is signed.</summary>
    public IReadOnlyList<AnswerGroup> Further { get; init; } = [];

    /// <summary>What a reviewer should know before signing.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The requirements of the case.</summary>
    public IReadOnlyList<JudgedRequirement> Requirements { get; init; } = [];

    /// <summary>What spring cords forgive; null if the cords were not sized as springs.</summary>
    public SpringSection? Springs { get; init; }

    /// <summary>What the motion in three dimensions adds; null if only the planar motion is known.</summary>
    public WholeMotionSection? Whole { get; init; }

    /// <summary>Why there is none, as the middle of a sentence; may be empty.</summary>
    public string WhyNotWhole { get; init; } = "";

    /// <summary>The motion, for the animation and the picture of the cord paths.</summary>
    public Unwinding? Unwinding { get; init; }

    /// <summary>Histories over time and trade curves.</summary>
    public IReadOnlyList<LineChart> Charts { get; init; } = [];

    /// <summary>Number of cases of the whole motion, and what their spread comes to; null if there are none.</summary>
    public WholeSpreadRows? WholeSpread { get; init; }

    /// <summary>Spread of the residual spin.</summary>
    public Histogram? ResidualSpin { get; init; }

    /// <summary>Which input the residual spin comes from.</summary>
    public Sensitivity? Sensitivity { get; init; }

    /// <summary>What was taken for granted.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Checks of the computation on itself.</summary>
    public IReadOnlyList<SelfCheck> Checks { get; init; } = [];

    /// <summary>Cautions of this case, shown after those that every report carries.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The inputs.</summary>
    public IReadOnlyList<InputRow> Inputs { get; init; } = [];

    /// <summary>Keys read and validated but without effect here.</summary>
    public IReadOnlyList<UnusedKey> Unused { get; init; } = [];

    /// <summary>The verdict, which follows from the checks and the requirements and is never stated apart.</summary>
    public Verdict Verdict =>
        Checks.Any(c => !c.Passed) ? Verdict.CheckFailed
        : Requirements.Count == 0 ? Verdict.NothingRequired
        : Requirements.Any(r => r.Verdict == Cases.Answers.Verdict.NotMet) ? Verdict.NotMet
        : Requirements.Any(r => r.Verdict == Cases.Answers.Verdict.NotShown) ? Verdict.NotAllShown
        : Verdict.Met;
}
