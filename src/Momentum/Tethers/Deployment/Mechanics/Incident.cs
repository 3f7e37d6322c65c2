namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>An event as the propagation notes it; cord −1 if it belongs to none.</summary>
internal readonly record struct Incident(DeploymentEventKind Kind, double Time, int Cord, double EnergyLost);
