namespace Momentum.Tethers;

/// <summary>What a let-go rule waits for.</summary>
internal enum LetGoKind
{
    Never,
    CordAngle,
    Time,
    SpinRate,
}
