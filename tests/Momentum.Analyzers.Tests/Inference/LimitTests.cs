using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Inference;

/// <summary>What the analyzer's page says it cannot see. One of these that fails is good news: the page then says too little.</summary>
public sealed class LimitTests
{
    [Theory]
    [InlineData("double[] state = { a.Feet, time.Seconds }; _ = Length.FromMeters(state[0]);")]
    [InlineData("double v = time.Seconds > 1 ? a.Meters : a.Feet; if (time.Seconds < 1) { _ = Length.FromMeters(v); }")]
    [InlineData("double omega = Math.Sqrt(f.Newtons / a.Meters / m.Kilograms); _ = Frequency.FromHertz(omega);")]
    [InlineData("_ = Length.FromMeters(a.Feet * 0.31);")]
    [InlineData("double x = angle.Radians + 2 * w.RadiansPerSecond;")]
    [InlineData("_ = Energy.FromJoules(f.Newtons * a.Meters); _ = Torque.FromNewtonMeters(f.Newtons * a.Meters);")]
    [InlineData("double v = double.Parse(a.Feet.ToString()); _ = Length.FromMeters(v);")]
    public Task In_a_body(string body) => Check.Body(body);

    [Theory]
    [InlineData("double _v; void Set(Length l) => _v = l.Feet; void Other(Length l) => _v = l.Meters; void Run() => _ = Length.FromMeters(_v);")]
    [InlineData("readonly double _v; Craft(double v) => _v = v; static Craft Of(Length l) => new(l.Feet); Length Run() => Length.FromMeters(_v);")]
    [InlineData("protected virtual double Height(Length l) => l.Feet; void Run(Length l) => _ = Length.FromMeters(Height(l));")]
    [InlineData("void Run(Rotation<Body, Inertial> q) => _ = Rotation<Inertial, Body>.FromQuaternion(q.X, q.Y, q.Z, q.W);")]
    [InlineData("double Run(Vector<Force, Body> f, Vector<Length, Inertial> r) => f.X.Newtons * r.X.Meters;")]
    [InlineData("static double A(Length l) => l.Feet; static double B(Length l) => A(l); static double C(Length l) => B(l); static double D(Length l) => C(l); void Run(Length l) => _ = Length.FromMeters(D(l));")]
    [InlineData("static double Scale(System.Func<double, double>[] steps, double v) => steps[0](v); void Run(Length l) => _ = Length.FromMeters(Scale([x => x], l.Feet));")]
    public Task In_a_class(string members) => Check.Members(members);

    [Fact]
    public Task What_is_reported_though_the_number_is_right() => Check.Members(
        "Mass Propellant(Impulse i, Duration specificImpulse) => Mass.FromPounds({|MOM009:i.PoundForceSeconds / specificImpulse.Seconds|});");
}
