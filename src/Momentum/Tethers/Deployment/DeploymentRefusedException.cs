
namespace Momentum.Tethers.Deployment;

/// <summary>
/// A deployment was described well, and yet its computed motion cannot be trusted or does not exist: the ledger does
/// not close, or a weight cannot leave the hub. The result is refused.
/// </summary>
public sealed class DeploymentRefusedException : ComputationRefusedException
{
    /// <summary>Creates the exception without a reason; prefer to give one.</summary>
    public DeploymentRefusedException()
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What was computed, why it cannot be trusted, and what can be done.</param>
    public DeploymentRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception with the one that caused it.</summary>
    /// <param name="message">What was computed, why it cannot be trusted, and what can be done.</param>
    /// <param name="innerException">The cause.</param>
    public DeploymentRefusedException(string message, Exception? innerException)
        : base(message, innerException)
    {
    }
}
