namespace Momentum.Dispersion;

/// <summary>How one case of many deployments ended.</summary>
public enum DeploymentOutcome : byte
{
    /// <summary>All weights were let go, as they should be.</summary>
    LetGo,

    /// <summary>A hinged cord came back to the hub and wound up on it again.</summary>
    WrappedBack,

    /// <summary>A weight or cord struck the hub, ran off its drum, or met the room.</summary>
    Struck,

    /// <summary>A cord was still on the hub at the end.</summary>
    NotLetGo,

    /// <summary>What was drawn does not exist: the scatter stated is too wide for its nominal value.</summary>
    NotPhysical,

    /// <summary>The computation was refused, so that nobody knows: a weight is not thrown outward, a cord chatters, the ledger does not close.</summary>
    Refused,
}
