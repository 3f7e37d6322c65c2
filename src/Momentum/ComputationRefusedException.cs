namespace Momentum;

/// <summary>
/// The input was well formed, and yet the computation does not give a result that can be trusted: it is refused
/// rather than returned. The whole library throws this, or a type derived from it, in such a case; a wrong argument
/// is an <see cref="ArgumentException"/> instead.
/// </summary>
public class ComputationRefusedException : Exception
{
    /// <summary>Creates the exception without a reason; prefer to give one.</summary>
    public ComputationRefusedException()
        : base("The computation was refused: its result could not be trusted.")
    {
    }

    /// <summary>Creates the exception.</summary>
    /// <param name="message">What was computed, why its result cannot be trusted, and what can be done.</param>
    public ComputationRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception with the one that caused it.</summary>
    /// <param name="message">What was computed, why its result cannot be trusted, and what can be done.</param>
    /// <param name="innerException">The cause.</param>
    public ComputationRefusedException(string message, Exception? innerException)
        : base(message, innerException)
    {
    }
}
