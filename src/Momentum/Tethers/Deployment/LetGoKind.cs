namespace Momentum.Tethers.Deployment;

/// <summary>What a cord's release waits for.</summary>
internal enum LetGoKind
{
    Never,
    CordAngle,
    Time,
    SpinRate,
}
