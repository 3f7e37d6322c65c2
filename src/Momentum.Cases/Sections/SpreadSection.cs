using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>In how many cases the requirements must hold, and how surely that must be shown.</summary>
internal sealed record SpreadSection : Section
{
    private const string Demand = "it is a demand and no measured value";

    [Key("Share of all cases in which each requirement must hold. Left out: 99.7 %, what stands for three standard deviations.", Example = "\"99.7 %\"", AtLeast = "50 %", AtMost = "99.9999 %", NoTolerance = Demand)]
    public Stated<Ratio>? Share { get; init; }

    [Key("Confidence with which a verdict must be shown. Left out: 95 %.", Example = "\"95 %\"", AtLeast = "50 %", AtMost = "99.9999 %", NoTolerance = Demand)]
    public Stated<Ratio>? Confidence { get; init; }

    [Key("Number of cases at most; fewer are run where fewer show the verdicts. Left out: 10000, or 2500 where heavy cords are computed in pieces.", Example = "10000", AtLeast = "100", AtMost = "10000000")]
    public int? Cases { get; init; }

    [Key("Chooses the draws; the same seed gives the same figures. Left out: 1.", Example = "1", AtLeast = "0", AtMost = "2147483647")]
    public int? Seed { get; init; }
}
