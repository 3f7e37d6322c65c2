namespace Momentum.Cases.Sections;

/// <summary>An axis of the body.</summary>
internal enum Axis
{
    X,
    Y,
    Z,
}
