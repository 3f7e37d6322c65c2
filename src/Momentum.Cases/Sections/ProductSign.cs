namespace Momentum.Cases.Sections;

/// <summary>The sign convention of stated products of inertia.</summary>
internal enum ProductSign
{
    /// <summary>The off-diagonal element of the tensor: I_xy = −∫xy dm.</summary>
    TensorElement,

    /// <summary>The positive integral: I_xy = +∫xy dm.</summary>
    PositiveIntegral,
}
