namespace Momentum.Dispersion;

/// <summary>How one case of an ensemble of deployments ended.</summary>
internal enum DeploymentOutcome : byte
{
    Released,
    WrappedBack,
    Struck,
    NotReleased,
    NotPhysical,
    Refused,
}
