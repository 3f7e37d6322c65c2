using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tests.Frames;
using UnitsNet;

namespace Momentum.Tests.Inertia;

[Properties(Arbitrary = [typeof(AnyBody), typeof(AnyTurn)])]
public sealed class PrincipalAxesTests
{
    // A few hundred roundings of a unit vector.
    private static readonly Angle _aligned = Angle.FromRadians(1e-13);

    private static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);

    private static InertiaTensor<Body> Tensor(double xx, double yy, double zz, double xy, double xz, double yz) =>
        InertiaTensor<Body>.Of(Si(xx), Si(yy), Si(zz), Si(xy), Si(xz), Si(yz), ProductSign.TensorElement);

    // Textbook eigenvalue exercises (from memory, not read); values by own computation to the digits shown, and
    // 1000 ± 100 √34 by the characteristic polynomial. Neither is a body's inertia: only the eigen-solver takes them.
    [Fact]
    public void The_eigen_solver_finds_the_values_of_textbook_matrices()
    {
        SymmetricEigen first = SymmetricEigen.Of(new(100, 300, 500, -20, -100, -50));
        Assert.Equal(72.108295, first.Value0, 5e-7);
        Assert.Equal(295.839849, first.Value1, 5e-7);
        Assert.Equal(532.051856, first.Value2, 5e-7);

        // Rounding of numbers near 1600: 2e-13, a few times over.
        SymmetricEigen second = SymmetricEigen.Of(new(1000, 1000, 1000, 0, -300, 500));
        Assert.Equal(1000 - (100 * Math.Sqrt(34)), second.Value0, 1e-12);
        Assert.Equal(1000, second.Value1, 1e-12);
        Assert.Equal(1000 + (100 * Math.Sqrt(34)), second.Value2, 1e-12);
    }

    [Fact]
    public void A_tensor_made_from_3_4_5_has_the_principal_moments_3_4_5()
    {
        // Own construction, a physical counterpart to the textbook matrices: checked by trace 12, sum of squares 50 and
        // determinant 60, which 3, 4, 5 alone have.
        double s = Math.Sqrt(6) / 8;
        PrincipalAxes<Body> axes = Tensor(3.625, 3.625, 4.75, 0.625, s, s).PrincipalAxes();
        Assert.Equal(3, axes.Smallest.KilogramSquareMeters, 1e-14);
        Assert.Equal(4, axes.Intermediate.KilogramSquareMeters, 1e-14);
        Assert.Equal(5, axes.Largest.KilogramSquareMeters, 1e-14);
    }

    [Property]
    public bool The_moments_agree_with_a_reference_library(AnyBody body)
    {
        double[] rows = new double[9];
        body.Inertia.CopySiTo(rows);
        Vector<double> reference = Matrix<double>.Build.DenseOfRowMajor(3, 3, rows).Evd(Symmetricity.Symmetric).EigenValues.Map(v => v.Real);
        PrincipalAxes<Body> axes = body.Inertia.PrincipalAxes();

        // Both are backward stable: each value is off by some rounding of the largest.
        double tolerance = 2e-14 * body.Largest;
        double[] sorted = [.. reference.OrderBy(v => v)];
        return Math.Abs(sorted[0] - axes.Smallest.KilogramSquareMeters) <= tolerance &&
            Math.Abs(sorted[1] - axes.Intermediate.KilogramSquareMeters) <= tolerance &&
            Math.Abs(sorted[2] - axes.Largest.KilogramSquareMeters) <= tolerance;
    }

    [Fact]
    public void A_small_moment_of_a_well_scaled_tensor_keeps_its_digits()
    {
        // A needle: D S D with D = diag(1, 1, 1e-5) and S well conditioned. Its determinant, exact in decimal, is the product
        // of the three values, and the two large ones are good to rounding: so the small one is known to all its digits.
        Tensor needle = new(1.2, 1.1, 1e-10, 0.1, 3e-6, 2e-6);
        decimal determinant = (1e-10m * ((1.1m * 1.2m) - 0.01m)) - (2e-6m * ((2e-6m * 1.2m) - (0.1m * 3e-6m))) + (3e-6m * ((2e-6m * 0.1m) - (1.1m * 3e-6m)));
        SymmetricEigen eigen = SymmetricEigen.Of(needle);
        double expected = (double)determinant / (eigen.Value1 * eigen.Value2);

        // Relative to the small value itself: 1e-16 of the largest, what a tridiagonal method promises, is 1e-6 of this one
        // (and MathNet.Numerics, which uses one, is off by 4e-7 of it here).
        Assert.Equal(expected, eigen.Value0, 1e-13 * expected);
    }

    [Property]
    public bool The_axes_make_the_tensor_diagonal_and_are_right_handed(AnyBody body)
    {
        PrincipalAxes<Body> axes = body.Inertia.PrincipalAxes();
        InertiaTensor<Principal> diagonal = body.Inertia.ExpressedIn(axes.ToPrincipal);
        double handed = Vector<Length, Body>.Along(axes.SmallestAxis, Length.FromMeters(1))
            .Cross(Vector<Force, Body>.Along(axes.IntermediateAxis, Force.FromNewtons(1)))
            .ComponentAlong(axes.LargestAxis).NewtonMeters;

        // Moments that count as equal, within 1e-12 of the largest, leave that much off the diagonal.
        return diagonal.EqualsWithin(axes.Inertia, Si(2e-12 * body.Largest)) && Math.Abs(handed - 1) < 1e-14;
    }

    [Property]
    public bool The_axes_of_distinct_moments_are_those_the_body_was_made_with(AnyBody body)
    {
        double[] moments = [body.B + body.C, body.A + body.C, body.A + body.B];
        Direction<Principal>[] own = [Direction<Principal>.XAxis, Direction<Principal>.YAxis, Direction<Principal>.ZAxis];
        Array.Sort(moments, own);
        double gap = Math.Min(moments[1] - moments[0], moments[2] - moments[1]) / moments[2];
        if (gap < 1e-9)
        {
            return true;
        }

        PrincipalAxes<Body> axes = body.Inertia.PrincipalAxes();
        Rotation<Principal, Body> made = body.Turn.To<Principal, Body>();

        // Perturbation of an eigenvector: the tensor's rounding over the gap to the neighbour.
        double tolerance = 2e-14 / gap;
        return Off(axes.SmallestAxis, made.Apply(own[0])) <= tolerance &&
            Off(axes.IntermediateAxis, made.Apply(own[1])) <= tolerance &&
            Off(axes.LargestAxis, made.Apply(own[2])) <= tolerance;

        static double Off(Direction<Body> a, Direction<Body> b) => Math.Min(a.AngleTo(b).Radians, a.AngleTo(-b).Radians);
    }

    [Fact]
    public void With_three_equal_moments_the_frame_axes_are_returned()
    {
        InertiaTensor<Body> sphere = Tensor(10, 10, 10, 0, 0, 0);
        Assert.Equal(Rotation<Body, Principal>.Identity, sphere.PrincipalAxes().ToPrincipal);
        Assert.True(sphere.PrincipalAxes().SmallestTwoAreEqual && sphere.PrincipalAxes().LargestTwoAreEqual);
    }

    [Fact]
    public void With_two_equal_moments_the_frame_axis_nearest_to_their_plane_is_projected_on_it()
    {
        PrincipalAxes<Body> disc = Tensor(1, 1, 2, 0, 0, 0).PrincipalAxes();
        Assert.True(disc.SmallestTwoAreEqual && !disc.LargestTwoAreEqual);
        Assert.Equal(Rotation<Body, Principal>.Identity, disc.ToPrincipal);

        PrincipalAxes<Body> rod = Tensor(5, 5, 1, 0, 0, 0).PrincipalAxes();
        Assert.True(!rod.SmallestTwoAreEqual && rod.LargestTwoAreEqual);
        Assert.True(rod.SmallestAxis.AngleTo(Direction<Body>.ZAxis) < _aligned);
        Assert.True(rod.IntermediateAxis.AngleTo(Direction<Body>.XAxis) < _aligned);
        Assert.True(rod.LargestAxis.AngleTo(Direction<Body>.YAxis) < _aligned);
    }

    [Property]
    public bool Rounding_of_equal_moments_does_not_turn_the_axes(AnyTurn turn)
    {
        // The same disc, its tensor computed along two routes that round differently.
        InertiaTensor<Body> once = InertiaTensor<Principal>.Diagonal(Si(1), Si(1), Si(2)).ExpressedIn(turn.To<Principal, Body>());
        InertiaTensor<Body> again = once.ExpressedIn(turn.To<Body, Inertial>()).ExpressedIn(turn.To<Body, Inertial>().Inverse());
        Direction<Body> a = once.PrincipalAxes().SmallestAxis;
        Direction<Body> b = again.PrincipalAxes().SmallestAxis;

        // Where two frame axes are equally far from the normal, rounding chooses between them.
        Direction<Body> normal = once.PrincipalAxes().LargestAxis;
        double[] far = [Math.Abs(normal.X), Math.Abs(normal.Y), Math.Abs(normal.Z)];
        Array.Sort(far);
        return far[1] - far[0] < 1e-9 || a.AngleTo(b).Radians < 1e-12 || a.AngleTo(-b).Radians < 1e-12;
    }
}
