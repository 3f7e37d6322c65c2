namespace Momentum.Dispersion;

/// <summary>How one case of an ensemble ended.</summary>
internal enum CaseOutcome : byte
{
    Released,
    WrappedBack,
    RateNotReached,
    NotPhysical,
    CordsFailed,
}
