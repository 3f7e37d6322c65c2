namespace Momentum.Tool.Answers;

/// <summary>How the dispersion is run.</summary>
/// <param name="Cases">Number of cases.</param>
/// <param name="Seed">Chooses the draws: the same seed gives the same cases.</param>
internal readonly record struct SpreadOptions(int Cases, ulong Seed)
{
    public const int UsualCases = 20_000;

    /// <summary>Told how far the run has come, from 0 to 1; null if nobody wants to know.</summary>
    public Action<double>? Progress { get; init; }

    public static SpreadOptions Usual => new(UsualCases, 1);
}
