using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tests.Frames;
using UnitsNet;

namespace Momentum.Tests.Inertia;

[Properties(Arbitrary = [typeof(AnyBody), typeof(AnyTurn)])]
public sealed class InertiaTensorTests
{
    private static readonly InertiaTensor<Body> _example = Tensor(31.5, 32.1, 18.4, 0.08, -0.11, 0.05);

    private static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);

    private static InertiaTensor<Body> Tensor(double xx, double yy, double zz, double xy, double xz, double yz, ProductSign products = ProductSign.TensorElement) =>
        InertiaTensor<Body>.Of(Si(xx), Si(yy), Si(zz), Si(xy), Si(xz), Si(yz), products);

    private static Vector<RotationalSpeed, Body> Rate(double x, double y, double z) => Vector<RotationalSpeed, Body>.FromSi(x, y, z);

    // A turn of the tensor rounds each element a dozen times.
    private static double Rounding(AnyBody body) => 1e-14 * body.Largest;

    [Fact]
    public void Times_a_rate_it_gives_the_angular_momentum_of_the_definition()
    {
        // Own arithmetic of H_i = Σ I_ij ω_j with whole and half numbers: exact in binary.
        InertiaTensor<Body> inertia = Tensor(4, 5, 6, -0.5, 0.25, 1);
        Assert.Equal(Vector<AngularMomentum, Body>.FromSi(3.75, 12.5, 20.25), inertia * Rate(1, 2, 3));
        Assert.Equal(Vector<Torque, Body>.FromSi(3.75, 12.5, 20.25), inertia * Vector<RotationalAcceleration, Body>.FromSi(1, 2, 3));
    }

    [Fact]
    public void Kinetic_energy_is_half_the_rate_times_the_angular_momentum()
    {
        InertiaTensor<Body> inertia = Tensor(4, 5, 6, -0.5, 0.25, 1);
        Assert.Equal(44.75, inertia.KineticEnergy(Rate(1, 2, 3)).Joules);
        Assert.Equal(0.5 * (inertia * Rate(1, 2, 3)).Dot(Rate(1, 2, 3)).Joules, inertia.KineticEnergy(Rate(1, 2, 3)).Joules);
    }

    [Fact]
    public void Moment_about_an_axis_is_the_element_of_that_axis()
    {
        Assert.Equal(18.4, _example.AboutAxis(Direction<Body>.ZAxis).KilogramSquareMeters);

        // ½ (xx + yy) + xy along the diagonal of x and y; ten roundings of numbers near 32.
        Assert.Equal(31.88, _example.AboutAxis(Direction<Body>.Of(1, 1, 0)).KilogramSquareMeters, 1e-13);
    }

    [Fact]
    public void The_two_product_signs_state_the_same_body_with_opposite_numbers()
    {
        Assert.Equal(_example, Tensor(31.5, 32.1, 18.4, -0.08, 0.11, -0.05, ProductSign.PositiveIntegral));
        Assert.NotEqual(_example, Tensor(31.5, 32.1, 18.4, 0.08, -0.11, 0.05, ProductSign.PositiveIntegral));
    }

    [Fact]
    public void A_product_sign_that_was_never_stated_is_refused()
    {
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Tensor(1, 1, 1, 0, 0, 0, default));
        Assert.Equal("products", refusal.ParamName);
    }

    // Sources: US customary units by their exact definitions, NIST SP 811 (2008) appendix B; factors derived from the inch,
    // the pound and standard gravity. Tolerance: two roundings of the factor.
    [Theory]
    [InlineData(UnitsNet.Units.MassMomentOfInertiaUnit.SlugSquareFoot, 1.3558179483314004)]
    [InlineData(UnitsNet.Units.MassMomentOfInertiaUnit.PoundSquareFoot, 0.0421401100938048)]
    [InlineData(UnitsNet.Units.MassMomentOfInertiaUnit.PoundSquareInch, 2.926396534292e-4)]
    public void Stated_in_customary_units_it_is_converted_by_the_exact_factor(UnitsNet.Units.MassMomentOfInertiaUnit unit, double factor)
    {
        MassMomentOfInertia one = MassMomentOfInertia.From(1, unit);
        Assert.Equal(factor, InertiaTensor<Body>.Diagonal(one, one, one).Xx.KilogramSquareMeters, 1e-15 * factor);
    }

    [Fact]
    public void A_moment_that_overflows_in_SI_units_is_refused_by_name()
    {
        // UnitsNet itself refuses NaN and infinity; a customary unit can still overflow on the way to kg·m².
        var huge = MassMomentOfInertia.FromSlugSquareFeet(1.7e308);
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(() => InertiaTensor<Body>.Diagonal(Si(1), huge, Si(1)));
        Assert.Equal("yy", refusal.ParamName);
    }

    // What no distribution of mass can have. The two with 300 and 1000 are textbook eigenvalue exercises (from memory, not
    // read), good for an eigen-solver and impossible as inertia.
    [Theory]
    [InlineData(-1, 1, 1, 0, 0, 0, "xx is -1")]
    [InlineData(1, -2, 1, 0, 0, 0, "yy is -2")]
    [InlineData(0, 0, 0, 0, 0, 0, "all moments are zero")]
    [InlineData(1, 1, 2.5, 0, 0, 0, "zz = 2.5 kg·m² is larger than xx + yy = 2 kg·m² by 0.5 kg·m² (20 %)")]
    [InlineData(1, 3, 1, 0, 0, 0, "yy = 3 kg·m² is larger than xx + zz = 2 kg·m² by 1")]
    [InlineData(3.1, 1, 2, 0, 0, 0, "xx = 3.1 kg·m² is larger than yy + zz = 3 kg·m² by 0.1")]
    [InlineData(2, 2, 2, 2.5, 0, 0, "the smallest is negative")]
    [InlineData(2, 2, 2, 1.5, 0, 0, "the largest exceeds the sum of the other two by 1")]
    [InlineData(1000, 1000, 1000, 0, -300, 500, "the largest exceeds the sum of the other two by 166 ")]
    [InlineData(100, 300, 500, -20, -100, -50, "zz = 500 kg·m² is larger than xx + yy = 400 kg·m² by 100")]
    public void What_no_mass_distribution_has_is_refused_by_name_and_amount(double xx, double yy, double zz, double xy, double xz, double yz, string reason)
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Tensor(xx, yy, zz, xy, xz, yz));
        Assert.Contains(reason, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tensor_in_the_other_sign_convention_is_named_as_such()
    {
        // Equal products p beside equal moments 2 have the eigenvalues 2 + 2p once and 2 - p twice: 0.8, 2.6, 2.6 for
        // p = -0.6, which is physical; reversed 3.2, 1.4, 1.4, which is not.
        Assert.Equal(0.8, Tensor(2, 2, 2, -0.6, -0.6, -0.6).PrincipalAxes().Smallest.KilogramSquareMeters, 1e-14);
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Tensor(2, 2, 2, -0.6, -0.6, -0.6, ProductSign.PositiveIntegral));
        Assert.Contains("other sign convention", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lamina_and_a_rod_are_allowed_within_rounding_and_not_beyond()
    {
        Assert.Equal(3, Tensor(1, 2, 3, 0, 0, 0).Zz.KilogramSquareMeters);
        Assert.Equal(0.3, Tensor(0.1, 0.2, 0.3, 0, 0, 0).Zz.KilogramSquareMeters);
        Assert.Equal(0, Tensor(5, 5, 0, 0, 0, 0).Zz.KilogramSquareMeters);

        // The limit is a billionth of the largest moment.
        Assert.Equal(1, Tensor(1, 2, 3 * (1 + 0.9e-9), 0, 0, 0).Xx.KilogramSquareMeters);
        Assert.Throws<ArgumentException>(() => Tensor(1, 2, 3 * (1 + 1.1e-9), 0, 0, 0));
        Assert.Throws<ArgumentException>(() => Tensor(5, 5, -6e-9, 0, 0, 0));
    }

    [Fact]
    public void Default_is_no_inertia_and_gives_no_rate()
    {
        InertiaTensor<Body> none = default;
        Assert.True(none.IsDefault);
        Assert.Equal(Vector<AngularMomentum, Body>.Zero, none * Rate(1, 2, 3));
        Assert.Throws<ComputationRefusedException>(() => none.Solve(Vector<AngularMomentum, Body>.FromSi(1, 0, 0)));
        Assert.Throws<ComputationRefusedException>(() => none.PrincipalAxes());
    }

    [Theory]
    [InlineData(5, 5, 0)]
    [InlineData(0, 5, 5)]
    [InlineData(5, 1e-14, 5)]
    public void The_rate_of_a_rod_about_itself_is_refused(double xx, double yy, double zz)
    {
        InertiaTensor<Body> rod = Tensor(xx, yy, zz, 0, 0, 0);
        ComputationRefusedException refusal = Assert.Throws<ComputationRefusedException>(() => rod.Solve(Vector<AngularMomentum, Body>.FromSi(1, 1, 1)));
        Assert.Contains("singular", refusal.Message, StringComparison.Ordinal);
        AnyTurn turn = new(1, -2, 3, 50);
        Assert.Throws<ComputationRefusedException>(() => rod.ExpressedIn(turn.To<Body, Inertial>()).Solve(Vector<Torque, Inertial>.FromSi(1, 1, 1)));
    }

    [Property]
    public bool Solving_gives_the_rate_back(AnyBody body)
    {
        // Error of a backward stable solution: rounding times largest by smallest moment.
        double condition = body.Largest / body.Smallest;
        if (condition > 1e11)
        {
            return true;
        }

        Vector<RotationalSpeed, Body> rate = Rate(0.3, -1.2, 7.5);
        var tolerance = RotationalSpeed.FromRadiansPerSecond(1e-15 * rate.Magnitude.RadiansPerSecond * 8 * condition);
        return body.Inertia.Solve(body.Inertia * rate).EqualsWithin(rate, tolerance);
    }

    [Property]
    public bool What_is_solved_multiplies_back_to_rounding_however_thin_the_body(AnyBody body)
    {
        if (body.Largest / body.Smallest > 1e11)
        {
            return true;
        }

        Vector<Torque, Body> torque = Vector<Torque, Body>.FromSi(0.3, -1.2, 7.5);
        Vector<RotationalAcceleration, Body> acceleration = body.Inertia.Solve(torque);

        // Backward stability: the residual is rounding of the largest products, not of their difference.
        double size = body.Largest * acceleration.Magnitude.RadiansPerSecondSquared;
        return (body.Inertia * acceleration).EqualsWithin(torque, Torque.FromNewtonMeters(1e-14 * size));
    }

    [Property]
    public bool Angular_momentum_and_energy_do_not_depend_on_the_axes(AnyBody body, AnyTurn turn)
    {
        Rotation<Body, Inertial> attitude = turn.To<Body, Inertial>();
        Vector<RotationalSpeed, Body> rate = Rate(0.3, -1.2, 7.5);
        Vector<AngularMomentum, Inertial> turned = body.Inertia.ExpressedIn(attitude) * attitude.Apply(rate);
        double size = Rounding(body) * rate.Magnitude.RadiansPerSecond;
        return turned.EqualsWithin(attitude.Apply(body.Inertia * rate), AngularMomentum.FromKilogramSquareMetersPerSecond(size)) &&
            Math.Abs((body.Inertia.ExpressedIn(attitude).KineticEnergy(attitude.Apply(rate)) - body.Inertia.KineticEnergy(rate)).Joules) <= size * rate.Magnitude.RadiansPerSecond;
    }

    [Property]
    public bool Trace_and_principal_moments_do_not_depend_on_the_axes(AnyBody body, AnyTurn turn)
    {
        InertiaTensor<Inertial> turned = body.Inertia.ExpressedIn(turn.To<Body, Inertial>());
        PrincipalAxes<Inertial> axes = turned.PrincipalAxes();
        double[] expected = [body.B + body.C, body.A + body.C, body.A + body.B];
        Array.Sort(expected);
        return Math.Abs((turned.Xx + turned.Yy + turned.Zz).KilogramSquareMeters - expected.Sum()) <= Rounding(body) &&
            Math.Abs(axes.Smallest.KilogramSquareMeters - expected[0]) <= Rounding(body) &&
            Math.Abs(axes.Intermediate.KilogramSquareMeters - expected[1]) <= Rounding(body) &&
            Math.Abs(axes.Largest.KilogramSquareMeters - expected[2]) <= Rounding(body);
    }

    [Property]
    public bool A_physical_body_is_accepted_along_any_axes(AnyBody body)
    {
        InertiaTensor<Body> i = body.Inertia;
        return InertiaTensor<Body>.Of(i.Xx, i.Yy, i.Zz, i.Xy, i.Xz, i.Yz, ProductSign.TensorElement) == i;
    }

    [Fact]
    public void The_matrix_is_written_row_by_row()
    {
        double[] rows = new double[9];
        Tensor(4, 5, 6, -0.5, 0.25, 1).CopySiTo(rows);
        Assert.Equal([4, -0.5, 0.25, -0.5, 5, 1, 0.25, 1, 6], rows);
        Assert.Throws<ArgumentException>(() => _example.CopySiTo(new double[8]));
    }

    [Fact]
    public void Text_is_in_the_invariant_culture_and_names_unit_point_and_frame() =>
        Assert.Equal("(xx 31.5, yy 32.1, zz 18.4, xy 0.08, xz -0.11, yz 0.05) kg·m² about the centre of mass [Body]", _example.ToString());

    [Fact]
    public void A_product_of_zero_reads_zero_in_either_sign_convention() =>
        Assert.DoesNotContain("-0", Tensor(4, 5, 6, 0, 0, 0, ProductSign.PositiveIntegral).ToString(), StringComparison.Ordinal);

    [Fact]
    public void Multiplying_solving_and_turning_do_not_allocate()
    {
        Vector<RotationalSpeed, Body> rate = Rate(1, 2, 3);
        Rotation<Body, Inertial> attitude = new AnyTurn(1, 2, 3, 40).To<Body, Inertial>();
        double sum = 0;
        Assert.Equal(0, Allocation.Of(() => sum += Work()));
        Assert.True(double.IsFinite(sum));

        double Work() => _example.Solve(_example * rate).SiX + _example.ExpressedIn(attitude).Si.Xx +
            _example.PrincipalAxes().ToPrincipal.X + _example.KineticEnergy(rate).Joules;
    }
}
