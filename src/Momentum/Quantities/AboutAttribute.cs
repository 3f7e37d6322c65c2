namespace Momentum.Quantities;

/// <summary>
/// States the point that bare moments of inertia, angular momenta or torques are about, so that those about different
/// points are not added.
/// </summary>
/// <remarks>Read by the compiler's analyzer, which compares the names; does nothing at run time.</remarks>
[AttributeUsage(AttributeTargets.Parameter | AttributeTargets.Field | AttributeTargets.Property | AttributeTargets.ReturnValue | AttributeTargets.Method)]
public sealed class AboutAttribute : Attribute
{
    /// <summary>States a point.</summary>
    /// <param name="point">The point's name, such as <c>"centre of mass"</c> or <c>"hub origin"</c>.</param>
    public AboutAttribute(string point)
    {
        Point = point;
    }

    /// <summary>The point's name.</summary>
    public string Point { get; }
}
