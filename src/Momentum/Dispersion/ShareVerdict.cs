namespace Momentum.Dispersion;

/// <summary>What the cases seen so far say of a required share.</summary>
public enum ShareVerdict
{
    /// <summary>Too few cases, or a share too near the required one, to tell.</summary>
    NotShown,

    /// <summary>The lower bound of the share is at least the required share.</summary>
    Met,

    /// <summary>The upper bound of the share is below the required share.</summary>
    NotMet,
}
