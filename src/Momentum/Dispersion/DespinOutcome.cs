namespace Momentum.Dispersion;

/// <summary>How one case of an ensemble of planar de-spins ended.</summary>
internal enum DespinOutcome : byte
{
    LetGo,
    WrappedBack,
    RateNotReached,
    NotPhysical,
    CordsFailed,
}
