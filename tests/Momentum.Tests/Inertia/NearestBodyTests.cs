using MathNet.Numerics.LinearAlgebra;
using Momentum.Frames;
using Momentum.Inertia;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

/// <summary>A body drawn within its tolerances stays a body, and its figures keep their scatter where physics lets them.</summary>
public class NearestBodyTests
{
    private const int Draws = 40_000;

    [Fact]
    public void A_body_that_can_exist_stays_to_the_bit_as_it_was_drawn()
    {
        InertiaTensor<Body> stage = Tensor(24.6, 25.1, 11.9, 0.05, -0.06, 0.04);

        Assert.Equal(InertiaTensor<Body>.Of(Moment(24.6), Moment(25.1), Moment(11.9), Moment(0.05), Moment(-0.06), Moment(0.04), ProductSign.TensorElement), stage);
        Assert.Equal(InertiaTensor<Body>.Diagonal(Moment(1), Moment(1), Moment(2)), Tensor(1, 1, 2, 0, 0, 0));
    }

    [Fact]
    public void A_thin_disc_keeps_the_scatter_of_its_spin_moment_and_its_diameters_follow()
    {
        var random = new Random(1);
        var spin = new List<double>();
        for (int i = 0; i < Draws; i++)
        {
            double drawn = 2 + (0.03 * Gauss(random));
            InertiaTensor<Body> body = Tensor(1, 1, drawn, 0, 0, 0);
            spin.Add(body.Zz.KilogramSquareMeters);

            Assert.Equal(drawn, body.Zz.KilogramSquareMeters, 1e-14);
            Assert.True(body.Xx + body.Yy >= body.Zz - Moment(1e-12));
        }

        Assert.Equal(0.03, Deviation(spin), 0.01 * 0.03);
        Assert.Equal(2, spin.Average(), 4 * 0.03 / Math.Sqrt(Draws));
    }

    [Fact]
    public void Where_the_limits_are_beyond_four_sigma_the_standard_deviations_of_all_six_hold_within_one_per_cent()
    {
        // xx + yy − zz = 0.4, and its standard deviation is 0.0866: the lamina is 4.6 sigma away.
        double[] nominal = [1.2, 1.2, 2.0, 0.05, -0.03, 0.02];
        double[] sigma = [0.05, 0.05, 0.05, 0.02, 0.02, 0.02];
        var random = new Random(2);
        var drawn = new List<double>[6];
        for (int k = 0; k < 6; k++)
        {
            drawn[k] = [];
        }

        var asStated = new List<double>[6];
        for (int k = 0; k < 6; k++)
        {
            asStated[k] = [];
        }

        for (int i = 0; i < Draws; i++)
        {
            double[] e = [.. nominal.Zip(sigma, (n, s) => n + (s * Gauss(random)))];
            InertiaTensor<Body> body = Tensor(e[0], e[1], e[2], e[3], e[4], e[5]);
            double[] found = [body.Xx.KilogramSquareMeters, body.Yy.KilogramSquareMeters, body.Zz.KilogramSquareMeters, body.Xy.KilogramSquareMeters, body.Xz.KilogramSquareMeters, body.Yz.KilogramSquareMeters];
            for (int k = 0; k < 6; k++)
            {
                drawn[k].Add(found[k]);
                asStated[k].Add(e[k]);
            }
        }

        // Against the same draws without physics, so that the sample's own error is not counted twice.
        for (int k = 0; k < 6; k++)
        {
            Assert.Equal(1, Deviation(drawn[k]) / Deviation(asStated[k]), 0.01);
        }
    }

    [Fact]
    public void Whatever_is_drawn_the_second_moments_are_positive_semidefinite()
    {
        var random = new Random(3);
        for (int i = 0; i < 2000; i++)
        {
            double[] e = [.. Enumerable.Range(0, 6).Select(k => (k < 3 ? 1.5 : 0) + Gauss(random))];
            InertiaTensor<Body> body;
            try
            {
                body = Tensor(e[0], e[1], e[2], e[3], e[4], e[5]);
            }
            catch (ArgumentException)
            {
                // Only where not one of the principal second moments is positive.
                Assert.True(SecondMoments(e).Enumerate().Max() <= 1e-12);
                continue;
            }

            double[] after = [body.Xx.KilogramSquareMeters, body.Yy.KilogramSquareMeters, body.Zz.KilogramSquareMeters, body.Xy.KilogramSquareMeters, body.Xz.KilogramSquareMeters, body.Yz.KilogramSquareMeters];
            Assert.True(SecondMoments(after).Enumerate().Min() >= -1e-12);
        }
    }

    [Fact]
    public void A_body_stated_about_a_point_is_drawn_about_that_point()
    {
        // 40 kg whose centre lies 0.5 m above the origin, where its inertia was measured: 12 about x, of which 10 are the transfer.
        var random = new Random(4);
        Position<Body> centre = Position<Body>.Of(0, 0, 0.5, LengthUnit.Meter);
        var measured = new List<double>();
        for (int i = 0; i < Draws; i++)
        {
            var about = PointInertia<Body>.Nearest(
                Position<Body>.Origin, Moment(12 + (0.1 * Gauss(random))), Moment(12.2), Moment(3), Moment(0), Moment(0), Moment(0), ProductSign.TensorElement);
            var body = MassProperties<Body>.Nearest(Mass.FromKilograms(40 + (0.2 * Gauss(random))), centre, about);
            measured.Add(body.InertiaAbout(Position<Body>.Origin).Xx.KilogramSquareMeters);
        }

        Assert.Equal(0.1, Deviation(measured), 0.001);
        Assert.Equal(12, measured.Average(), 4 * 0.1 / Math.Sqrt(Draws));
    }

    [Fact]
    public void A_centre_that_takes_all_of_the_inertia_is_refused()
    {
        var rod = PointInertia<Body>.Of(Position<Body>.Origin, Moment(1), Moment(1), Moment(0), Moment(0), Moment(0), Moment(0), ProductSign.TensorElement);
        Assert.Throws<ArgumentException>(() => MassProperties<Body>.Nearest(Mass.FromKilograms(100), Position<Body>.Of(0, 0, 1, LengthUnit.Meter), rod));
    }

    private static Vector<double> SecondMoments(double[] e)
    {
        double half = 0.5 * (e[0] + e[1] + e[2]);
        return Matrix<double>.Build.DenseOfRowArrays(
            [half - e[0], -e[3], -e[4]], [-e[3], half - e[1], -e[5]], [-e[4], -e[5], half - e[2]]).Evd(Symmetricity.Symmetric).EigenValues.Real();
    }

    private static InertiaTensor<Body> Tensor(double xx, double yy, double zz, double xy, double xz, double yz) =>
        InertiaTensor<Body>.Nearest(Moment(xx), Moment(yy), Moment(zz), Moment(xy), Moment(xz), Moment(yz), ProductSign.TensorElement);

    private static MassMomentOfInertia Moment(double si) => MassMomentOfInertia.FromKilogramSquareMeters(si);

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double Deviation(List<double> values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Count - 1));
    }
}
