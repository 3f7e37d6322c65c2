namespace Momentum.Cases.Sections;

/// <summary>The point about which a stated inertia is taken.</summary>
internal enum InertiaReference
{
    CentreOfMass,
    Origin,
}
