namespace Momentum.Tethers.Springs;

/// <summary>
/// What decides the motion on spring cords, without units: lengths in hub radii R, masses in that of all weights m, times in
/// 1/w0, with w0 the initial spin.
/// </summary>
/// <param name="Inertia">I/(m R²), the hub's spin inertia without weights.</param>
/// <param name="Length">Unstretched length of each cord over R.</param>
/// <param name="Spring">k/(m w0²), with k of all cords together.</param>
/// <param name="DampingRatio">Share of the critical damping of the weight on its cord.</param>
internal readonly record struct SpringCordProportions(double Inertia, double Length, double Spring, double DampingRatio);
