namespace Momentum.Motion;

/// <summary>Where each number of the state stands that <see cref="ForcedBodySystem{TBody, TLoads}"/> integrates; SI.</summary>
internal static class ForcedState
{
    /// <summary>Of the centre of mass, inertial.</summary>
    internal const int Place = 0;

    /// <summary>Of the centre of mass, inertial.</summary>
    internal const int Velocity = 3;

    /// <summary>Angular momentum of body and slug about the centre of mass, inertial.</summary>
    internal const int Momentum = 6;

    /// <summary>Quaternion from body to inertial axes, scalar last.</summary>
    internal const int Attitude = 9;

    /// <summary>Angular momentum of the slug, inertial.</summary>
    internal const int Slug = 13;

    /// <summary>Work of the loads.</summary>
    internal const int Work = 16;

    /// <summary>Energy that the slug has turned to heat.</summary>
    internal const int Dissipated = 17;

    /// <summary>Energy that the lost mass took along.</summary>
    internal const int CarriedAway = 18;

    internal const int Size = 19;
}
