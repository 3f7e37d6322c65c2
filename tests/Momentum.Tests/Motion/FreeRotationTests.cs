using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Motion;
using Momentum.Numerics;

namespace Momentum.Tests.Motion;

/// <summary>The closed form against computations that share nothing with it.</summary>
public class FreeRotationTests
{
    /// <summary>
    /// Moments, rates at 0, time, rates then, attitude then (identity at 0). Computed outside this project with mpmath 1.2.1 and
    /// 50 digits: rates by its ellipfun, precession as the quadrature of its rate h (I1 w1² + I2 w2²)/((I1 w1)² + (I2 w2)²) over
    /// whole half periods and the rest, Euler angles 3-1-3. That reference agreed at t = 10 with a Taylor series of order 40 of
    /// the equations of motion to 1e-46. The second time is arbitrary, the third a million turns at 1 rad/s. Among the cases are
    /// two near the separatrix, one rod-like body, one nearly spherical and one that spins almost about its axis of least inertia.
    /// </summary>
    public static TheoryData<double[], double[], double, double[], double[]> Reference => new()
    {
        { [1.0, 2.0, 3.0], [1.0, 0.0, 1.0], 10.0, [-0.9210699984443322, 0.389397044115332, 0.9744006605830824], [0.107340757620159, 0.22094732179436732, -0.44449898354227807, 0.8614411740654775] },
        { [1.0, 2.0, 3.0], [1.0, 0.0, 1.0], 1234567.0, [-0.6893265023083152, -0.7244508080024373, 0.9083264880692433], [-0.1389973093479099, 0.3255452657728734, -0.8612855856298526, 0.36453692256498876] },
        { [1.0, 2.0, 3.0], [1.0, 0.0, 1.0], 6283185.0, [-0.7230043685122377, -0.6908434577472818, 0.9170124166530824], [-0.05304321850566519, -0.09754996656507672, 0.9084781140073611, 0.4029118233104371] },
        { [1.0, 2.0, 3.0], [0.5, 0.0, 1.0], 10.0, [-0.4664487188557799, -0.18007107673860798, 0.994581052055286], [-0.032875974187042724, 0.12774838551049697, -0.8756088003311993, 0.46465982084022756] },
        { [1.0, 2.0, 3.0], [0.5, 0.0, 1.0], 1234567.0, [0.21999070337023915, 0.4490034414463518, 0.9658150115436759], [0.09505023232404675, -0.012920219220433208, -0.37265279500104914, 0.9229996834497544] },
        { [1.0, 2.0, 3.0], [0.5, 0.0, 1.0], 6283185.0, [-0.009251307285167782, -0.49991440598718034, 0.957442006370183], [-0.11193857588612725, -0.0014221949097675682, 0.45762509436647975, 0.8820697283074025] },
        { [1.0, 2.0, 3.0], [1.2, 0.3, 0.1], 10.0, [1.1890260791037228, 0.3409061208180739, -0.03551064060612819], [0.14874932744683642, -0.08775849738178901, -0.021676238133488825, 0.984734595930185] },
        { [1.0, 2.0, 3.0], [1.2, 0.3, 0.1], 1234567.0, [1.2147928472056178, 0.23297711985958755, -0.1480108798049785], [0.30933333165166177, -0.15247798032697935, 0.03362076632741897, 0.9380474399070898] },
        { [1.0, 2.0, 3.0], [1.2, 0.3, 0.1], 6283185.0, [1.2017492355057362, 0.29291427920362395, -0.10677269475950836], [-0.6442281231194741, -0.4732445656707638, 0.008994822424411032, 0.6007735010922197] },
        { [1.0, 2.0, 3.0], [-0.4, 0.3, -1.1], 10.0, [-0.27232957393801116, -0.4193287530789432, -1.0869166476538514], [0.23414990859535942, 0.03418967187330282, 0.49154602404676445, 0.8380855522473815] },
        { [1.0, 2.0, 3.0], [-0.4, 0.3, -1.1], 1234567.0, [-0.49985599649799006, 0.011999281853566838, -1.1135313223008143], [0.15790540055668514, -0.08295188814105359, 0.7886050078422847, 0.5884615623258133] },
        { [1.0, 2.0, 3.0], [-0.4, 0.3, -1.1], 6283185.0, [-0.4295902786433595, -0.25583626110291857, -1.1037130979116025], [0.20228365066164736, -0.009783832488377562, 0.4390572928189874, 0.875336675182354] },
        { [1.0, 2.0, 3.0], [-1.9, -0.2, 0.3], 10.0, [-1.8294769748436468, 0.5504670730542727, 0.04825626551050836], [-0.4052851909304224, 0.2330889079035944, 0.4253918028819659, 0.7748905013391449] },
        { [1.0, 2.0, 3.0], [-1.9, -0.2, 0.3], 1234567.0, [-1.8489725956571226, 0.48093694026240286, 0.16196672445396298], [0.3867395244384686, 0.04172537288929216, 0.18488056419517623, 0.9025024711751376] },
        { [1.0, 2.0, 3.0], [-1.9, -0.2, 0.3], 6283185.0, [-1.848312164198067, -0.483468865261722, -0.15943426683385106], [-0.11945558966826249, 0.301106737860263, -0.12833404346841995, 0.9373342348379282] },
        { [1.0, 2.0, 3.0], [1.7320508, 0.2, 1.0], 10.0, [8.236459162398893e-05, 1.743559567951928, 0.00010488610701255288], [0.2219795256499457, -0.48489628326402545, -0.6271971598436451, 0.5676481369237674] },
        { [1.0, 2.0, 3.0], [1.7320508, 0.2, 1.0], 1234567.0, [-0.0021462583429932036, -1.743558248913917, 0.0012426643734663155], [-0.733701480829292, 0.2225935778996522, 0.13588078113635454, 0.6274317886627276] },
        { [1.0, 2.0, 3.0], [1.7320508, 0.2, 1.0], 6283185.0, [0.06557732279368986, -1.7423259134030729, 0.03786120038662348], [-0.3838071621413209, -0.3050036973938483, 0.6320770721324553, 0.6001194728964978] },
        { [1.0, 2.0, 3.0], [1.7320508075688772, 0.2, -1.0], 10.0, [0.00016622720516256838, -1.743559569492398, -9.597132225094486e-05], [0.24909046913694746, 0.4321269762723488, 0.7037758698187011, 0.5058851051610267] },
        { [1.0, 2.0, 3.0], [1.7320508075688772, 0.2, -1.0], 1234567.0, [-3.2528341741339143e-07, -1.743559577416239, -1.8811071842467552e-07], [0.7337955061720552, -0.433066547868356, -0.13747000445592522, 0.5050737749220108] },
        { [1.0, 2.0, 3.0], [1.7320508075688772, 0.2, -1.0], 6283185.0, [-1.6125069648494924e-06, -1.7435595774155237, -9.310435609577621e-07], [0.3890598046419448, -0.6651153346179421, -0.6371707869607417, 0.01635384700502118] },
        { [18.4, 31.5, 32.1], [7.5, 0.1, -0.2], 10.0, [7.500031261852948, 0.061201564489756714, -0.21416972325153075], [-0.1689994872039192, -0.004733389834155861, 0.012504623014558352, 0.9855254450031993] },
        { [18.4, 31.5, 32.1], [7.5, 0.1, -0.2], 1234567.0, [7.499925224750973, 0.15798646418429096, 0.16112983054820887], [0.9322116972171854, 0.042541151481242455, -0.006592493459984955, 0.3593440427112777] },
        { [18.4, 31.5, 32.1], [7.5, 0.1, -0.2], 6283185.0, [7.499787402636305, -0.22919940697513314, 0.009515430612944027], [0.5981552585361546, 0.010701622288656693, 0.016848451829465493, 0.8011316319038259] },
        { [0.01, 1.0, 1.005], [0.02, 0.3, 2.0], 10.0, [-0.213360171507628, 0.014356185298568925, 2.0221024166443256], [-0.054819731106797207, 0.049589812528453486, 0.6319335903246954, 0.7714891995317312] },
        { [0.01, 1.0, 1.005], [0.02, 0.3, 2.0], 1234567.0, [0.11787966328223212, 0.2512841541344975, 2.006636084558308], [-0.009029043410763816, -0.09329476640492697, -0.6801492931841077, 0.7270567391323014] },
        { [0.01, 1.0, 1.005], [0.02, 0.3, 2.0], 6283185.0, [0.20130992851289348, -0.10074662395060395, 2.0196667034252838], [-0.04875138694541526, 0.04248031173514205, 0.8657829816816154, 0.49622429809137236] },
        { [1.0, 1.000001, 1.000002], [1.0, 2.0, 3.0], 10.0, [0.9999399993000141, 2.0000599979400002, 2.9999800003400248], [-0.03762130228898012, -0.0752559663600279, -0.11289684348576591, 0.9900381204136788] },
        { [1.0, 1.000001, 1.000002], [1.0, 2.0, 3.0], 1234567.0, [1.7319481779823067, -0.026739807339029673, 3.3165705919656285], [-0.3964691426938406, -0.2794563641085384, -0.8724451731966184, 0.05963035482679635] },
        { [1.0, 1.000001, 1.000002], [1.0, 2.0, 3.0], 6283185.0, [-1.7222203371601372, 0.2606111146180104, 3.3115010127151576], [0.10121492627008918, -0.32664592862553454, -0.939434987172648, 0.02280089665845249] },
    };

    [Theory]
    [MemberData(nameof(Reference))]
    public void Rates_and_attitude_agree_with_a_50_digit_reference_after_any_time(double[] moments, double[] start, double time, double[] rates, double[] attitude)
    {
        FreeRotation motion = Make(moments, new Vec(start[0], start[1], start[2]));
        motion.At(time, out Vec rate, out Quaternion q);
        double size = new Vec(start[0], start[1], start[2]).Length;

        // Some tens of roundings in the elliptic functions and the trigonometry; nothing grows with the time.
        double error = (rate - new Vec(rates[0], rates[1], rates[2])).Length / size;
        Assert.InRange(error, 0.0, 2e-14);
        Assert.InRange(AngleBetween(q, new Quaternion(attitude[0], attitude[1], attitude[2], attitude[3])), 0.0, 4e-14);
    }

    [Theory]
    [InlineData(0.0, 0.0, 1.0)]
    [InlineData(0.0, -0.7, 0.0)]
    [InlineData(2.0, 0.0, 0.0)]
    [InlineData(0.0, 0.0, 0.0)]
    public void Rotation_about_a_principal_axis_stays(double x, double y, double z)
    {
        FreeRotation motion = Make([1.0, 2.0, 3.0], new Vec(x, y, z));
        motion.At(100.0, out Vec rate, out Quaternion q);
        Assert.Equal(new Vec(x, y, z), rate);
        double speed = Math.Abs(x + y + z);
        double sign = Math.Sign(x + y + z);
        double sine = sign * Math.Sin(50.0 * speed);
        Quaternion expected = new(x != 0 ? sine : 0.0, y != 0 ? sine : 0.0, z != 0 ? sine : 0.0, Math.Cos(50.0 * speed));
        Assert.InRange(AngleBetween(q, expected), 0.0, 1e-13);
    }

    [Fact]
    public void On_the_separatrix_the_rates_are_hyperbolic()
    {
        // Exact in doubles: I = (4, 5, 9), I3 (I3 - I2) w3² = I1 (I2 - I1) w1²: 36 w3² = 4 w1², w1 = 3 w3.
        FreeRotation motion = Make([4.0, 5.0, 9.0], new Vec(3.0, 0.0, 1.0));
        Assert.Equal(double.PositiveInfinity, motion.RatePeriod);

        // h² = 144 + 81 = 225, 2T = 36 + 9 = 45; s² = (I3 - I2)(h² - 2 T I1)/(I1 I2 I3) = 4 · 45 / 180 = 1.
        // The end state is rotation about the intermediate axis at h / I2 = 3.
        foreach (double time in new[] { -30.0, -2.0, 0.5, 3.0, 1e6 })
        {
            motion.At(time, out Vec rate, out Quaternion q);
            double secant = 1.0 / Math.Cosh(time);
            Assert.Equal(3.0 * secant, rate.X, 2e-14);
            Assert.Equal(3.0 * Math.Tanh(time), Math.Abs(rate.Y) * Math.Sign(time), 2e-14);
            Assert.Equal(secant, rate.Z, 2e-14);
            Assert.Equal(1.0, q.SquaredLength, 1e-15);
        }

        motion.At(12.0, out Vec integratedRate, out Quaternion integrated);
        (Vec w, Quaternion a) = Integrate(Diagonal([4.0, 5.0, 9.0]), new Vec(3.0, 0.0, 1.0), 12.0);

        // The separatrix is unstable: the integrator's error grows by exp(12) on the way.
        Assert.InRange((w - integratedRate).Length, 0.0, 1e-8);
        Assert.InRange(AngleBetween(a, integrated), 0.0, 1e-8);
    }

    [Fact]
    public void Turning_at_a_standstill_of_the_separatrix_covers_both_branches()
    {
        // The four branches of the separatrix, each against the integrator.
        foreach ((double x, double z) in new[] { (3.0, 1.0), (3.0, -1.0), (-3.0, 1.0), (-3.0, -1.0) })
        {
            FreeRotation motion = Make([4.0, 5.0, 9.0], new Vec(x, 0.0, z));
            motion.At(2.0, out Vec rate, out Quaternion q);
            (Vec w, Quaternion a) = Integrate(Diagonal([4.0, 5.0, 9.0]), new Vec(x, 0.0, z), 2.0);
            Assert.InRange((w - rate).Length, 0.0, 1e-11);
            Assert.InRange(AngleBetween(a, q), 0.0, 1e-11);
        }
    }

    [Fact]
    public void A_symmetric_body_precesses_at_its_momentum_over_its_transverse_moment()
    {
        // Curtis, Orbital Mechanics for Engineering Students, example 10.2: a shell with C = 100, A = 125 kg·m² that spins at 2π rad/min
        // with a nutation angle of 20° precesses at 26.7457 rad/min. (Statement and figure as published; the spin is the relative one:
        // w3 = spin + precession cos(nutation), so that h = A · precession.)
        const double Published = 26.7457;
        double nutation = Math.PI / 9.0;
        double precession = 100.0 * 2.0 * Math.PI / ((125.0 - 100.0) * Math.Cos(nutation));
        FreeRotation motion = Make([125.0, 125.0, 100.0], new Vec(precession * Math.Sin(nutation) / 60.0, 0.0, 125.0 * precession * Math.Cos(nutation) / 100.0 / 60.0));
        Assert.Equal(Published, 60.0 * motion.MeanPrecession, 5e-5);
        Assert.Equal(precession / 60.0, motion.MeanPrecession, 1e-15);

        // Half a turn of the axis in 7.0477 s.
        motion.At(7.0477, out _, out Quaternion q);
        Vec before = new(0.0, 0.0, 1.0);
        Vec h = new(125.0 * precession * Math.Sin(nutation), 0.0, 125.0 * precession * Math.Cos(nutation));
        Vec opposite = (h * (2.0 * before.Dot(h) / h.Square)) - before;
        Assert.InRange((q.Turn(before) - opposite).Length, 0.0, 2e-5);
    }

    [Theory]
    [InlineData(1.0, 0.0, 1.0, 6.9356675410317)]
    [InlineData(0.5, 0.0, 1.0, 6.4206003123616)]
    public void Period_of_the_rates_is_that_of_the_Jacobi_functions(double x, double y, double z, double period)
    {
        // I = (1, 2, 3); own evaluation of Landau and Lifshitz, section 37, to 14 digits.
        Assert.Equal(period, Make([1.0, 2.0, 3.0], new Vec(x, y, z)).RatePeriod, 1e-13);
    }

    [Property(MaxTest = 60)]
    public void The_integrator_agrees_for_any_body_and_any_state(byte a, byte b)
    {
        (Tensor tensor, Vec rate) = AnyBody((a * 256) + b);
        double time = 2.0 * Math.PI / rate.Length;
        FreeRotation motion = new(tensor, rate, Quaternion.Identity);
        motion.At(time, out Vec w, out Quaternion q);
        (Vec wi, Quaternion qi) = Integrate(tensor, rate, time);

        // Bodies near the separatrix magnify the integrator's error of 1e-13 by up to exp(2π), which is 535.
        Assert.InRange((w - wi).Length / rate.Length, 0.0, 1e-10);
        Assert.InRange(AngleBetween(q, qi), 0.0, 1e-10);
    }

    [Property(MaxTest = 200)]
    public void Momentum_and_energy_stay_to_rounding_at_any_time(byte a, byte b, short seconds)
    {
        (Tensor tensor, Vec rate) = AnyBody((a * 256) + b);
        FreeRotation motion = new(tensor, rate, Quaternion.Identity);
        motion.At(seconds * 1e5, out Vec w, out Quaternion q);
        Vec before = tensor * rate;
        Vec after = q.Turn(tensor * w);

        // Rates by their amplitudes, attitude by half-angles: some ten roundings each.
        Assert.InRange((after - before).Length / before.Length, 0.0, 2e-14);
        double energy = w.Dot(tensor * w);
        Assert.Equal(1.0, energy / (2.0 * motion.Energy), 1e-14);
        Assert.Equal(before.Length, motion.AngularMomentum, 1e-14 * before.Length);
    }

    [Property(MaxTest = 100)]
    public void Two_stretches_of_time_are_one(byte a, byte b)
    {
        (Tensor tensor, Vec rate) = AnyBody((a * 256) + b);
        double turn = 2.0 * Math.PI / rate.Length;
        FreeRotation whole = new(tensor, rate, Quaternion.Identity);
        whole.At(turn, out Vec middle, out Quaternion middleAttitude);
        FreeRotation second = new(tensor, middle, middleAttitude);
        whole.At(2.0 * turn, out Vec end, out Quaternion endAttitude);
        second.At(turn, out Vec end2, out Quaternion endAttitude2);

        // The middle state is rounded, which near the separatrix is magnified by up to exp(2π).
        Assert.InRange((end - end2).Length / rate.Length, 0.0, 1e-11);
        Assert.InRange(AngleBetween(endAttitude, endAttitude2), 0.0, 1e-11);
    }

    [Property(MaxTest = 50)]
    public void Nearly_symmetric_bodies_join_the_symmetric_one(byte step)
    {
        // d from 1e-16 to 0.1: the motion must come from the symmetric one without a jump.
        double d = Math.Pow(10.0, -1.0 - (step / 17.0));
        Vec rate = new(0.3, -0.2, 1.1);
        Make([2.0, 2.0, 3.0], rate).At(5.0, out Vec w0, out Quaternion q0);
        Make([2.0, 2.0 + d, 3.0], rate).At(5.0, out Vec w, out Quaternion q);
        Assert.InRange((w - w0).Length, 0.0, (6.0 * d) + 1e-14);
        Assert.InRange(AngleBetween(q, q0), 0.0, (6.0 * d) + 2e-14);
        Make([2.0, 3.0, 3.0], rate).At(5.0, out w0, out q0);
        Make([2.0, 3.0, 3.0 + d], rate).At(5.0, out w, out q);
        Assert.InRange((w - w0).Length, 0.0, (6.0 * d) + 1e-14);
        Assert.InRange(AngleBetween(q, q0), 0.0, (6.0 * d) + 2e-14);
        Make([2.0, 2.0, 2.0], rate).At(5.0, out w0, out q0);
        Make([2.0, 2.0 + (d / 2.0), 2.0 + d], rate).At(5.0, out w, out q);
        Assert.InRange((w - w0).Length, 0.0, (6.0 * d) + 1e-14);
        Assert.InRange(AngleBetween(q, q0), 0.0, (6.0 * d) + 2e-14);
    }

    [Theory]
    [InlineData(1e-30)]
    [InlineData(1e30)]
    [InlineData(1e-150)]
    [InlineData(1e150)]
    public void Scaling_the_rates_scales_the_time(double factor)
    {
        Make([1.0, 2.0, 3.0], new Vec(1.0, 0.2, 1.0)).At(10.0, out Vec w, out Quaternion q);
        FreeRotation scaled = new(Diagonal([1.0, 2.0, 3.0]), new Vec(1.0, 0.2, 1.0) * factor, Quaternion.Identity);
        scaled.At(10.0 / factor, out Vec ws, out Quaternion qs);
        Assert.InRange(((ws * (1.0 / factor)) - w).Length, 0.0, 1e-14);
        Assert.InRange(AngleBetween(q, qs), 0.0, 2e-14);
    }

    [Fact]
    public void Hardly_any_rate_across_the_intermediate_axis_gives_numbers_not_NaN()
    {
        foreach (double tiny in new[] { 1e-8, 1e-20, 1e-60, 1e-99, 1e-120, 1e-200, 1e-308 })
        {
            FreeRotation motion = Make([1.0, 2.0, 3.0], new Vec(tiny, 1.0, 0.0));
            motion.At(1e4, out Vec w, out Quaternion q);
            Assert.Equal(1.0, q.SquaredLength, 1e-14);
            Assert.Equal(1.0, (w.X * w.X / 2.0) + (w.Y * w.Y) + (1.5 * w.Z * w.Z), 1e-14);
        }
    }

    [Fact]
    public void A_thin_rod_and_a_lost_angle_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Make([0.0, 1.0, 1.0], new Vec(1.0, 1.0, 1.0)));
        FreeRotation motion = Make([1.0, 2.0, 3.0], new Vec(1.0, 0.2, 1.0));
        Assert.Throws<ComputationRefusedException>(() => motion.At(1e16, out _, out _));
        Assert.Throws<ComputationRefusedException>(() => motion.At(double.NaN, out _, out _));
    }

    private static FreeRotation Make(double[] moments, Vec rate)
    {
        return new FreeRotation(Diagonal(moments), rate, Quaternion.Identity);
    }

    private static Tensor Diagonal(double[] moments)
    {
        return new Tensor(moments[0], moments[1], moments[2], 0.0, 0.0, 0.0);
    }

    private static double AngleBetween(Quaternion a, Quaternion b)
    {
        Quaternion d = a.Conjugate() * b;
        return 2.0 * Math.Atan2(Math.Sqrt((d.X * d.X) + (d.Y * d.Y) + (d.Z * d.Z)), Math.Abs(d.W));
    }

    /// <summary>A physical tensor (from three second moments, some of them equal or nearly so) and a rate.</summary>
    private static (Tensor Inertia, Vec Rate) AnyBody(int seed)
    {
        Random random = new(seed);
        double Second()
        {
            return random.Next(4) switch { 0 => 1.0, 1 => 1.0 + (1e-6 * random.NextDouble()), 2 => 0.01 + random.NextDouble(), _ => Math.Pow(10.0, -2.0 * random.NextDouble()) };
        }

        (double a, double b, double c) = (Second(), Second(), Second());
        Quaternion turn = new Quaternion(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble()).Normalised();
        if (random.Next(3) == 0)
        {
            turn = Quaternion.Identity;
        }

        Vec e1 = turn.Turn(new Vec(1.0, 0.0, 0.0));
        Vec e2 = turn.Turn(new Vec(0.0, 1.0, 0.0));
        Vec e3 = turn.Turn(new Vec(0.0, 0.0, 1.0));
        (double i1, double i2, double i3) = (b + c, a + c, a + b);
        double Element(Func<Vec, double> p, Func<Vec, double> q)
        {
            return (i1 * p(e1) * q(e1)) + (i2 * p(e2) * q(e2)) + (i3 * p(e3) * q(e3));
        }

        Tensor tensor = new(
            Element(v => v.X, v => v.X), Element(v => v.Y, v => v.Y), Element(v => v.Z, v => v.Z),
            Element(v => v.X, v => v.Y), Element(v => v.X, v => v.Z), Element(v => v.Y, v => v.Z));
        double Component()
        {
            return random.Next(5) switch { 0 => 0.0, 1 => 1e-7 * random.NextDouble(), _ => (4.0 * random.NextDouble()) - 2.0 };
        }

        Vec rate = new(Component(), Component(), Component());
        return (tensor, rate.Length > 0.0 ? rate : new Vec(0.0, 1.0, 0.0));
    }

    private static (Vec Rate, Quaternion Attitude) Integrate(Tensor tensor, Vec rate, double time)
    {
        OdeIntegrator<EulerWithAttitude, NoEvents, DormandPrince853> integrator = new(new EulerWithAttitude(tensor), default, OdeTolerances.Of(1e-14, 1e-15 * Math.Max(1.0, rate.Length)));
        integrator.Start(0.0, [rate.X, rate.Y, rate.Z, 0.0, 0.0, 0.0, 1.0]);
        integrator.Run(time);
        ReadOnlySpan<double> y = integrator.State;
        return (Vec.Read(y), Quaternion.Read(y[3..]).Normalised());
    }

    /// <summary>Euler's equations with a full tensor through its inverse, and the quaternion's rate: written for this test only.</summary>
    private readonly record struct EulerWithAttitude(Tensor Inertia) : IOdeSystem
    {
        public int Dimension
        {
            get { return 7; }
        }

        public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
        {
            Tensor t = Inertia;
            Vec w = Vec.Read(state);
            Vec right = (t * w).Cross(w);
            Vec c1 = new(t.Xx, t.Xy, t.Xz);
            Vec c2 = new(t.Xy, t.Yy, t.Yz);
            Vec c3 = new(t.Xz, t.Yz, t.Zz);
            double determinant = c1.Dot(c2.Cross(c3));
            derivatives[0] = right.Dot(c2.Cross(c3)) / determinant;
            derivatives[1] = c1.Dot(right.Cross(c3)) / determinant;
            derivatives[2] = c1.Dot(c2.Cross(right)) / determinant;
            Quaternion rate = Quaternion.Read(state[3..]) * new Quaternion(w.X, w.Y, w.Z, 0.0);
            derivatives[3] = 0.5 * rate.X;
            derivatives[4] = 0.5 * rate.Y;
            derivatives[5] = 0.5 * rate.Z;
            derivatives[6] = 0.5 * rate.W;
        }
    }
}
