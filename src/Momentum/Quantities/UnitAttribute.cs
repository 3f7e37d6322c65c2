namespace Momentum.Quantities;

/// <summary>
/// States the unit of a bare number (or of each number in an array, span or sequence), so that the compiler's analyzer can
/// check what is stored in it, passed to it and made of it.
/// </summary>
/// <remarks>
/// <code>
/// static double Thrust([Unit("kg/s")] double massFlow, [Unit("m/s")] double exhaustSpeed);
/// [Unit("rad/s")] public double Rate { get; }
/// [return: Unit("N*m")] double Torque(…);
/// </code>
/// It is read at compile time and does nothing at run time.
/// </remarks>
[AttributeUsage(AttributeTargets.Parameter | AttributeTargets.Field | AttributeTargets.Property | AttributeTargets.ReturnValue | AttributeTargets.Method)]
public sealed class UnitAttribute : Attribute
{
    /// <summary>States a unit.</summary>
    /// <param name="unit">
    /// Symbols joined by <c>*</c>, <c>/</c> and <c>^</c>, such as <c>rad/s</c>, <c>kg*m^2</c>, <c>lbf*in</c>, <c>1/min</c>,
    /// <c>deg</c>, <c>rpm</c>; <c>1</c> for a pure number.
    /// </param>
    public UnitAttribute(string unit)
    {
        Unit = unit;
    }

    /// <summary>The unit as written.</summary>
    public string Unit { get; }
}
