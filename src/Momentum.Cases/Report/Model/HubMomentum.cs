using Momentum.Quantities;

namespace Momentum.Cases.Report.Model;

/// <summary>The hub's angular momentum about its centre of mass.</summary>
/// <param name="Direction">Where it points; where it last pointed, if there is none left.</param>
/// <param name="Share">Its size as a share of that at the start.</param>
internal readonly record struct HubMomentum(Direction<StageAxes> Direction, double Share);
