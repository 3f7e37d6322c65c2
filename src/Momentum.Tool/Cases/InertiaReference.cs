namespace Momentum.Tool.Cases;

/// <summary>The point about which a stated inertia is taken.</summary>
internal enum InertiaReference
{
    CentreOfMass,
    Origin,
}
