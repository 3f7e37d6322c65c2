namespace Momentum.Cases.Answers;

/// <summary>How the dispersion is run.</summary>
/// <param name="Cases">Number of cases in the plane.</param>
/// <param name="Seed">Chooses the draws: the same seed gives the same cases.</param>
internal readonly record struct SpreadOptions(int Cases, ulong Seed)
{
    public const int UsualCases = 20_000;

    /// <summary>A case in three dimensions takes as long as hundreds in the plane: so many of these make one of those.</summary>
    public const int CasesForOneWhole = 20;

    /// <summary>Number of cases in three dimensions.</summary>
    public int WholeCases => Math.Max(1, Cases / CasesForOneWhole);

    /// <summary>Told how far the run has come, from 0 to 1; null if nobody wants to know.</summary>
    public Action<double>? Progress { get; init; }

    public static SpreadOptions Usual => new(UsualCases, 1);
}
