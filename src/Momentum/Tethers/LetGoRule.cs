namespace Momentum.Tethers;

/// <summary>A let-go rule as bare SI numbers: what every solution of the motion reads.</summary>
/// <param name="Kind">What it waits for.</param>
/// <param name="Value">Cord angle (rad), spin rate (rad/s) or time (s), by its kind.</param>
/// <param name="Delay">From the condition to the let-go, s.</param>
internal readonly record struct LetGoRule(LetGoKind Kind, double Value, double Delay);
