namespace Momentum.Cases.Answers;

/// <summary>How the spread is run.</summary>
/// <param name="Cases">Number of cases at most; null for what the case says.</param>
/// <param name="Seed">Chooses the draws: the same seed gives the same cases; null for what the case says.</param>
public readonly record struct SpreadOptions(int? Cases, ulong? Seed)
{
    /// <summary>Number of cases at most if nobody says.</summary>
    public const int UsualCases = 10_000;

    /// <summary>The same where heavy cords are computed in pieces, each case of which takes as long as ten.</summary>
    public const int UsualCasesInPieces = 2_500;

    /// <summary>The seed if nobody says.</summary>
    public const ulong UsualSeed = 1;

    /// <summary>Told how far the run has come, from 0 to 1; null if nobody wants to know.</summary>
    internal IProgress<double>? Progress { get; init; }

    /// <summary>Ends the run.</summary>
    internal CancellationToken Cancellation { get; init; }

    /// <summary>What the case says, or else the usual.</summary>
    public static SpreadOptions Usual => default;
}
