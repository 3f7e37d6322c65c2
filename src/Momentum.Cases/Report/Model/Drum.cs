namespace Momentum.Cases.Report.Model;

/// <summary>Where one cord is wound.</summary>
/// <param name="Radius">To the cord's centreline, m.</param>
/// <param name="Height">Of its plane from the hub's centre of mass, m.</param>
/// <param name="EndAngle">
/// Where the cord's end is fixed, rad about the drums' axis from the hub's first axis, not wrapped: what is wound reaches from
/// the angle of the root to here.
/// </param>
/// <param name="Piece">Length of one of the straight pieces that the cord is made of, m; all of it if that is one.</param>
internal sealed record Drum(double Radius, double Height, double EndAngle, double Piece);
