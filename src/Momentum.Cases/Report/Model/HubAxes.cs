using Momentum.Quantities;

namespace Momentum.Cases.Report.Model;

/// <summary>
/// Axes fixed in the hub, with their origin at its centre of mass, or on a rig at the place nearest to it on the bearing's axis: the third along the spin axis, the first where angles about
/// it are counted from.
/// </summary>
internal readonly struct HubAxes : IFrame;
