namespace Momentum.Dispersion;

/// <summary>How an uncertain value scatters about its nominal one.</summary>
public enum ScatterShape
{
    /// <summary>It does not.</summary>
    None,

    /// <summary>Normally distributed; the width is one standard deviation (1 sigma).</summary>
    Normal,

    /// <summary>Evenly distributed between limits; the width is the limit to either side.</summary>
    Uniform,

    /// <summary>One of measured values, each with equal chance.</summary>
    Samples,
}
