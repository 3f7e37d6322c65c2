namespace Momentum.Dispersion;

/// <summary>How one case of an ensemble of deployments ended.</summary>
internal enum DeploymentOutcome : byte
{
    LetGo,
    WrappedBack,
    Struck,
    NotLetGo,
    NotPhysical,
    Refused,
}
