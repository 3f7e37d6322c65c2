using System.Globalization;

namespace Momentum.Numerics;

/// <summary>
/// A numerical integration could not go on with the accuracy that was asked for. The integrator that threw it still
/// holds the last accepted time and state.
/// </summary>
public sealed class IntegrationRefusedException : ComputationRefusedException
{
    /// <summary>Creates the exception without a reason; prefer the one that states it.</summary>
    public IntegrationRefusedException()
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">Why the integration cannot go on.</param>
    public IntegrationRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception with the one that caused it.</summary>
    /// <param name="message">Why the integration cannot go on.</param>
    /// <param name="innerException">The cause.</param>
    public IntegrationRefusedException(string message, Exception? innerException)
        : base(message, innerException)
    {
    }

    internal IntegrationRefusedException(IntegrationRefusal refusal, double time, string detail)
        : base(string.Create(CultureInfo.InvariantCulture, $"Integration refused at time {time:R}: {detail}"))
    {
        Refusal = refusal;
        Time = time;
    }

    /// <summary>The kind of reason.</summary>
    public IntegrationRefusal Refusal { get; }

    /// <summary>Time of the last accepted state, in the integrator's unit of time.</summary>
    public double Time { get; }
}
