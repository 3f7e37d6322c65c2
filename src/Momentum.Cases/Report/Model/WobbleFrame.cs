namespace Momentum.Cases.Report.Model;

/// <summary>How the hub wobbles at one instant.</summary>
/// <param name="TransverseRate">Rate across the spin axis, in <see cref="Unwinding.SpinUnit"/>.</param>
/// <param name="NutationAngle">Angle between the spin axis and the hub's angular momentum, degrees.</param>
internal readonly record struct WobbleFrame(double TransverseRate, double NutationAngle);
