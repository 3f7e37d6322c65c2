namespace Momentum.Inertia;

/// <summary>
/// Which sign stated products of inertia have. Both are in use, and mistaking one for the other turns the principal axes
/// the wrong way, so whoever states products says which; there is no default.
/// </summary>
public enum ProductSign
{
    /// <summary>The products are the tensor's own off-diagonal elements: xy is −∫ x y dm.</summary>
    TensorElement = 1,

    /// <summary>The products are the integrals: xy is +∫ x y dm, and the tensor's element is −xy.</summary>
    PositiveIntegral = 2,
}
