namespace Momentum.Dispersion;

/// <summary>By how much one cord and its weight differ from the nominal ones, SI.</summary>
internal struct CordDraw
{
    internal double WeightMass;
    internal double Length;
    internal double HubRadius;
    internal double LineDensity;

    /// <summary>By how much it misses the cord angle at which it is to let go; late is positive.</summary>
    internal double LetGoMiss;

    /// <summary>How much later than its rule says it lets go.</summary>
    internal double LateBy;
}
