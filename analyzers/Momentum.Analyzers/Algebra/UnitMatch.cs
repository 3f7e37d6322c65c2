using System.Collections.Concurrent;

namespace Momentum.Analyzers.Algebra;

/// <summary>How a number in one unit stands to a number in another.</summary>
/// <remarks>
/// <para>Angle is kept to tell a degree from a radian, and given up where physics gives it up: a radian counts as 1 when
/// one side has an angle that the other lacks, so that <c>½ I w²</c> is an energy and <c>r w</c> a speed as long as w is in
/// rad/s, and neither when it is in rpm.</para>
/// <para>A cycle against an angle is 2π rad. A cycle against neither counts as 1 when there is one of it (a period's
/// inverse is a frequency; an impulse bit times a pulse frequency is a thrust), and as 2π when there are more (a
/// stiffness is m (2π f)²).</para>
/// </remarks>
internal readonly struct UnitMatch
{
    private static readonly ConcurrentDictionary<UnitPair, UnitMatch> _found = new();

    private UnitMatch(bool dimensionsAgree, bool kindsAgree, Scale ratio)
    {
        DimensionsAgree = dimensionsAgree;
        KindsAgree = kindsAgree;
        Ratio = ratio;
    }

    internal bool DimensionsAgree { get; }

    internal bool KindsAgree { get; }

    /// <summary>The number in the second unit is this times the number in the first; 1 where the dimensions differ.</summary>
    internal Scale Ratio { get; }

    internal bool Agree => DimensionsAgree && KindsAgree && Ratio.IsOne;

    internal static UnitMatch Between(Unit from, Unit to) => new UnitPair(from, to, Dimension.Whole).Recall(_found, static (left, right, _) => Find(left, right!));

    private static UnitMatch Find(Unit from, Unit to)
    {
        if (!from.Dimension.WithoutAngle.Equals(to.Dimension.WithoutAngle))
        {
            return new(false, true, Scale.One);
        }

        int angle = from.Dimension.Angle - to.Dimension.Angle;
        int cycle = from.Dimension.Cycle - to.Dimension.Cycle;
        Scale ratio = from.Scale.Over(to.Scale);
        if (cycle != 0 && (angle == -cycle || Math.Abs(cycle) != Dimension.Whole))
        {
            Scale? turns = Scale.Integer(2).Times(Scale.Pi).Power(cycle);
            ratio = turns is null ? ratio : ratio.Times(turns);
        }

        return new(true, KindsMatch(from, to), ratio);
    }

    // A temperature on a scale with an offset is not a difference in kelvin, and neither is one above absolute zero; a torque
    // is not an energy. Otherwise a kind that is not known agrees with any.
    private static bool KindsMatch(Unit from, Unit to) => from.Kind == to.Kind || (!from.IsPoint && !to.IsPoint && (from.Kind == Kind.Unspecified || to.Kind == Kind.Unspecified));
}
