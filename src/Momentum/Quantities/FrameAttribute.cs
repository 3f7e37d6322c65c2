namespace Momentum.Quantities;

/// <summary>
/// States along whose axes the numbers of an array, span or plain vector are taken, where the frame is no longer in the
/// type.
/// </summary>
/// <remarks>Read by the compiler's analyzer; does nothing at run time.</remarks>
[AttributeUsage(AttributeTargets.Parameter | AttributeTargets.Field | AttributeTargets.Property | AttributeTargets.ReturnValue | AttributeTargets.Method)]
public sealed class FrameAttribute : Attribute
{
    /// <summary>States a frame.</summary>
    /// <param name="frame">The frame's marker type, such as <c>typeof(Body)</c>.</param>
    public FrameAttribute(Type frame)
    {
        Frame = frame;
    }

    /// <summary>The frame's marker type.</summary>
    public Type Frame { get; }
}
