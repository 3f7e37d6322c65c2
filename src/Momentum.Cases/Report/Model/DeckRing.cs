namespace Momentum.Cases.Report.Model;

/// <summary>The edge of the hub's deck: a circle about the drums' axis that the cords may touch.</summary>
/// <param name="Radius">m.</param>
/// <param name="Height">Of its plane from the hub's centre of mass, m.</param>
internal sealed record DeckRing(double Radius, double Height);
