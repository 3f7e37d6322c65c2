namespace Momentum.Tool.Answers;

/// <summary>How the dispersion is run.</summary>
/// <param name="Cases">Number of cases.</param>
/// <param name="Seed">Chooses the draws: the same seed gives the same cases.</param>
internal readonly record struct SpreadOptions(int Cases, ulong Seed)
{
    public const int UsualCases = 20_000;

    public static SpreadOptions Usual => new(UsualCases, 1);
}
