namespace Momentum.Quantities;

/// <summary>States the sign convention of bare products of inertia.</summary>
/// <remarks>Read by the compiler's analyzer, which compares the names; does nothing at run time.</remarks>
[AttributeUsage(AttributeTargets.Parameter | AttributeTargets.Field | AttributeTargets.Property | AttributeTargets.ReturnValue | AttributeTargets.Method)]
public sealed class ProductSignAttribute : Attribute
{
    /// <summary>States a convention.</summary>
    /// <param name="convention">
    /// The convention's name: <c>"tensor element"</c> (I_xy = −∫xy dm) or <c>"positive integral"</c> (I_xy = +∫xy dm).
    /// </param>
    public ProductSignAttribute(string convention)
    {
        Convention = convention;
    }

    /// <summary>The convention's name.</summary>
    public string Convention { get; }
}
