using Momentum.Tethers;

namespace Momentum.Cases.Answers;

/// <summary>Everything computed for one case; commands and report only present it.</summary>
internal sealed record Answer
{
    public required CaseReading Reading { get; init; }

    public required SpinningBody Body { get; init; }

    public required PlanarMotion Motion { get; init; }

    /// <summary>What spring cords were sized for; null if the cords are not springs.</summary>
    public required SpringCords? Springs { get; init; }

    /// <summary>The design deployed in three dimensions; null if there is no such motion.</summary>
    public required WholeMotion? Whole { get; init; }

    /// <summary>Why there is no motion in three dimensions, as the middle of a sentence; empty if there is.</summary>
    public required string WhyNotWhole { get; init; }

    /// <summary>What was solved for: the key of the case file, or an empty text if nothing was.</summary>
    public required string SolvedFor { get; init; }

    /// <summary>The numbers, most important first.</summary>
    public required IReadOnlyList<AnswerFigure> Figures { get; init; }

    public required IReadOnlyList<JudgedRequirement> Requirements { get; init; }

    /// <summary>What the stated tolerances make of it; null if none is stated that the motion depends on.</summary>
    public required Spread? Spread { get; init; }

    /// <summary>The same of the whole motion; null if there is none or nothing about it is uncertain.</summary>
    public required WholeSpread? WholeSpread { get; init; }

    /// <summary>What a reviewer should know, in sentences.</summary>
    public required IReadOnlyList<Problem> Warnings { get; init; }

    /// <summary>What was taken for granted, in sentences.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    public PlanarDesign Design => Motion.Design;

    /// <summary>True only if every requirement was judged and met.</summary>
    public bool AllMet => Requirements.All(r => r.Verdict == Verdict.Met);
}
