namespace Momentum.Cases.Answers;

/// <summary>How the spread is run.</summary>
/// <param name="Cases">Number of cases in the plane; in three dimensions there are fewer.</param>
/// <param name="Seed">Chooses the draws: the same seed gives the same cases.</param>
public readonly record struct SpreadOptions(int Cases, ulong Seed)
{
    /// <summary>Number of cases if nobody says.</summary>
    public const int UsualCases = 20_000;

    /// <summary>A case in three dimensions takes as long as hundreds in the plane: so many of these make one of those.</summary>
    internal const int CasesForOneWhole = 20;

    /// <summary>Number of cases in three dimensions.</summary>
    internal int WholeCases => Math.Max(1, Cases / CasesForOneWhole);

    /// <summary>Told how far the run has come, from 0 to 1; null if nobody wants to know.</summary>
    internal IProgress<double>? Progress { get; init; }

    /// <summary>Ends the run.</summary>
    internal CancellationToken Cancellation { get; init; }

    /// <summary>The usual number of cases, and the first seed.</summary>
    public static SpreadOptions Usual => new(UsualCases, 1);
}
