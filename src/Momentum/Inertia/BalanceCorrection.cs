using Momentum.Quantities;

namespace Momentum.Inertia;

/// <summary>The two masses that bring a body into balance, and the body with them.</summary>
/// <typeparam name="TFrame">The body's frame.</typeparam>
/// <param name="First">The mass at the first station.</param>
/// <param name="Second">The mass at the second station.</param>
/// <param name="Corrected">The body with both masses: its centre of mass is on the spin axis, and the spin axis is principal.</param>
public sealed record BalanceCorrection<TFrame>(CorrectionMass<TFrame> First, CorrectionMass<TFrame> Second, MassProperties<TFrame> Corrected)
    where TFrame : struct, IFrame;
