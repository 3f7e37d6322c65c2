using Momentum.Tethers;

namespace Momentum.Cases.Answers;

/// <summary>Everything computed for one case; commands and report only present it.</summary>
public sealed class Answer
{
    private readonly Lazy<IReadOnlyList<SelfCheck>> _checks;

    internal Answer(CaseReading reading, SpinningBody body, PlanarMotion motion)
    {
        Reading = reading;
        Body = body;
        Motion = motion;
        _checks = new Lazy<IReadOnlyList<SelfCheck>>(() => SelfChecks.Of(this));
    }

    /// <summary>The case as it was read.</summary>
    public CaseReading Reading { get; }

    /// <summary>What was solved for, as the case file's key is spelled: <c>cord_length</c>, <c>weight_mass</c> or <c>final_rate</c>.</summary>
    public string SolvedFor { get; init; } = "";

    /// <summary>All that was computed, as one tree of groups: design, planar motion, body, spread, whole motion.</summary>
    public AnswerGroup Figures { get; init; } = new("", "", []);

    /// <summary>What the case requires, and how each came out.</summary>
    public IReadOnlyList<JudgedRequirement> Requirements { get; init; } = [];

    /// <summary>True only if every requirement is met, at nominal where the case states no tolerance.</summary>
    public bool AllMet => Requirements.All(r => r.Verdict is Verdict.Met or Verdict.MetAtNominal);

    /// <summary>What a reviewer should know.</summary>
    public IReadOnlyList<Problem> Warnings { get; init; } = [];

    /// <summary>What was taken for granted, in sentences.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Why there is no motion in three dimensions, as the middle of a sentence; empty if there is.</summary>
    public string WhyNotWhole { get; init; } = "";

    /// <summary>The checks of the computation on itself. Made when first asked for.</summary>
    internal IReadOnlyList<SelfCheck> Checks => _checks.Value;

    /// <summary>Those of the checks that failed, or could not be made: with one of them the figures are not to be used.</summary>
    internal IReadOnlyList<SelfCheck> FailedChecks => [.. Checks.Where(c => !c.Passed)];

    /// <summary>The body without weights and cords.</summary>
    internal SpinningBody Body { get; }

    /// <summary>The planar motion of the sized design.</summary>
    internal PlanarMotion Motion { get; }

    /// <summary>What spring cords were sized for; null if the cords are not springs.</summary>
    internal SpringCords? Springs { get; init; }

    /// <summary>The design deployed in three dimensions; null if there is no such motion.</summary>
    internal WholeMotion? Whole { get; init; }

    /// <summary>What the stated tolerances make of it; null if none is stated that the motion depends on.</summary>
    internal Spread? Spread { get; init; }
}
