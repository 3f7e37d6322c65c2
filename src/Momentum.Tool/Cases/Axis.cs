namespace Momentum.Tool.Cases;

/// <summary>An axis of the body.</summary>
internal enum Axis
{
    X,
    Y,
    Z,
}
