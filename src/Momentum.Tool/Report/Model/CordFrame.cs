namespace Momentum.Tool.Report.Model;

/// <summary>One cord and its weight at one instant, seen along the spin axis in axes that do not turn.</summary>
/// <param name="TangentAngle">Direction from the hub's centre to where the free cord leaves the hub, rad, not wrapped.</param>
/// <param name="WoundAngle">Arc still wound, counted forward in the sense of the spin from that point, rad.</param>
/// <param name="WeightX">Weight, m from the hub's centre.</param>
/// <param name="WeightY">Weight, m from the hub's centre.</param>
/// <param name="Attached">False once the cord has left the hub.</param>
internal sealed record CordFrame(double TangentAngle, double WoundAngle, double WeightX, double WeightY, bool Attached);
