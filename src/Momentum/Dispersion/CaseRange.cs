namespace Momentum.Dispersion;

/// <summary>Cases that an ensemble was made of.</summary>
/// <param name="Seed">Chose the draws.</param>
/// <param name="First">Number of the first.</param>
/// <param name="Count">How many.</param>
internal readonly record struct CaseRange(ulong Seed, long First, long Count)
{
    /// <summary>Refuses ensembles that have cases in common, which would count twice.</summary>
    /// <exception cref="ArgumentException">They have.</exception>
    internal static void RefuseOverlap(CaseRange[] these, CaseRange[] those, string name)
    {
        foreach (CaseRange a in these)
        {
            foreach (CaseRange b in those)
            {
                long from = Math.Max(a.First, b.First);
                long until = Math.Min(a.First + a.Count, b.First + b.Count);
                if (a.Seed == b.Seed && from < until)
                {
                    throw new ArgumentException(
                        FormattableString.Invariant($"Both ensembles hold the cases {from} to {until - 1} of seed {a.Seed}, which would count twice. Merge pieces that have no case in common."),
                        name);
                }
            }
        }
    }
}
