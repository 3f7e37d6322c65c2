using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>The principal moments of inertia of a body, ascending, and how its principal axes stand in its frame.</summary>
/// <typeparam name="TFrame">The body's frame.</typeparam>
/// <remarks>
/// <para>The axes are right-handed. Of the two directions of each axis, the one is taken whose largest direction cosine is
/// positive, for the smallest and the intermediate axis; the third follows from the right hand.</para>
/// <para>Moments closer than 1e-12 of the largest count as equal, since neither measurement nor arithmetic tells them
/// apart. Then every axis in the plane of the two is principal, and the first one returned is the projection, on that
/// plane, of the frame axis farthest from the plane's normal (of equally far ones the first). With three equal moments the
/// frame's own axes are returned. The moments themselves are as computed, not averaged.</para>
/// <para>Equality is exact. <c>default</c> is a point's: no moments. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct PrincipalAxes<TFrame> :
    IEquatable<PrincipalAxes<TFrame>>,
    IEqualityOperators<PrincipalAxes<TFrame>, PrincipalAxes<TFrame>, bool>
    where TFrame : struct, IFrame
{
    private const double EqualWithin = 1e-12;

    private PrincipalAxes(double smallest, double intermediate, double largest, Rotation<TFrame, Principal> toPrincipal)
    {
        Inertia = new(new(smallest, intermediate, largest, 0, 0, 0));
        ToPrincipal = toPrincipal;
    }

    /// <summary>The smallest moment.</summary>
    public MassMomentOfInertia Smallest => Inertia.Xx;

    /// <summary>The moment between.</summary>
    public MassMomentOfInertia Intermediate => Inertia.Yy;

    /// <summary>The largest moment.</summary>
    public MassMomentOfInertia Largest => Inertia.Zz;

    /// <summary>The inertia along the principal axes: diagonal.</summary>
    public InertiaTensor<Principal> Inertia { get; }

    /// <summary>The rotation from the body's frame to its principal axes.</summary>
    public Rotation<TFrame, Principal> ToPrincipal { get; }

    /// <summary>The axis of the smallest moment.</summary>
    public Direction<TFrame> SmallestAxis => ToPrincipal.Inverse().Apply(Direction<Principal>.XAxis);

    /// <summary>The axis of the intermediate moment.</summary>
    public Direction<TFrame> IntermediateAxis => ToPrincipal.Inverse().Apply(Direction<Principal>.YAxis);

    /// <summary>The axis of the largest moment.</summary>
    public Direction<TFrame> LargestAxis => ToPrincipal.Inverse().Apply(Direction<Principal>.ZAxis);

    /// <summary>Whether the smallest and the intermediate moment are equal within 1e-12 of the largest.</summary>
    public bool SmallestTwoAreEqual => AreEqual(Inertia.Si.Xx, Inertia.Si.Yy, Inertia.Si.Zz);

    /// <summary>Whether the intermediate and the largest moment are equal within 1e-12 of the largest.</summary>
    public bool LargestTwoAreEqual => AreEqual(Inertia.Si.Yy, Inertia.Si.Zz, Inertia.Si.Zz);

    /// <summary>Whether moments and axes are the same numbers.</summary>
    public static bool operator ==(PrincipalAxes<TFrame> left, PrincipalAxes<TFrame> right) =>
        left.Inertia == right.Inertia && left.ToPrincipal == right.ToPrincipal;

    /// <summary>Whether moments or axes differ.</summary>
    public static bool operator !=(PrincipalAxes<TFrame> left, PrincipalAxes<TFrame> right) => !(left == right);

    /// <inheritdoc/>
    public bool Equals(PrincipalAxes<TFrame> other) => Inertia.Equals(other.Inertia) && ToPrincipal.Equals(other.ToPrincipal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is PrincipalAxes<TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Inertia, ToPrincipal);

    /// <summary>The moments in kg·m² and the rotation, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Inertia.Si.Xx}, {Inertia.Si.Yy}, {Inertia.Si.Zz} kg·m², axes {ToPrincipal}");

    internal static PrincipalAxes<TFrame> Of(InertiaTensor<TFrame> inertia)
    {
        if (inertia.IsDefault)
        {
            throw new ComputationRefusedException("The inertia is default, which is zero: it has no principal axes.");
        }

        SymmetricEigen eigen = SymmetricEigen.Of(inertia.Si);
        double a = eigen.Value0;
        double b = eigen.Value1;
        double c = eigen.Value2;
        Vec first;
        Vec second;
        switch (AreEqual(a, b, c), AreEqual(b, c, c))
        {
            case (true, true):
                return new(a, b, c, Rotation<TFrame, Principal>.Identity);
            case (true, false):
                Vec normal = Signed(eigen.Vector2);
                first = Triad.InPlaneOf(normal);
                second = normal.Cross(first);
                break;
            case (false, true):
                first = Signed(eigen.Vector0);
                second = Triad.InPlaneOf(first);
                break;
            default:
                first = Signed(eigen.Vector0);
                second = Signed(eigen.Vector1);
                break;
        }

        Vec third = first.Cross(second);
        return new(a, b, c, Rotation<TFrame, Principal>.FromMatrix(
            [first.X, first.Y, first.Z, second.X, second.Y, second.Z, third.X, third.Y, third.Z]));
    }

    private static bool AreEqual(double smaller, double larger, double largest) => larger - smaller <= EqualWithin * largest;

    private static Vec Signed(Vec v)
    {
        double largest = Math.Abs(v.X) >= Math.Abs(v.Y) && Math.Abs(v.X) >= Math.Abs(v.Z) ? v.X : Math.Abs(v.Y) >= Math.Abs(v.Z) ? v.Y : v.Z;
        return largest < 0 ? -v : v;
    }
}
