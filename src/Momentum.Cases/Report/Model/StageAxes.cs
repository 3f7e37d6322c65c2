using Momentum.Quantities;

namespace Momentum.Cases.Report.Model;

/// <summary>
/// Axes that do not turn, those of the hub as it stood at the start. Their origin goes with the hub's centre of mass, so that
/// the animation is seen from there; on a rig it stays on the bearing's axis, where the centre of mass is or goes round.
/// </summary>
internal readonly struct StageAxes : IFrame;
