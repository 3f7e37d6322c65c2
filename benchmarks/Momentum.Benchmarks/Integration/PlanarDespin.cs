using Momentum.Numerics;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// Two weights of 3 kg on cords of 5.7 m, a hub of 300 kg·m² with a radius of 1.5 m, from 5 rad/s; from 0.02 s, when 0.1 rad are
/// unwound, over the end of unwinding at 0.76 s exactly, to 1 s, while hinging. State: turn of the hub; unwound angle, then cord
/// angle from the tangent; spin; rate of the cord in space. The start is the closed form, rounded.
/// </summary>
internal sealed class PlanarDespin : Problem<PlanarDespin.Equations>
{
    private const double Hub = 300.0;
    private const double Radius = 1.5;
    private const double Weights = 6.0;
    private const double Length = 5.7;
    private const double A = Hub + (Weights * Radius * Radius);
    private const double B = Weights * Length * Length;
    private const double C = Weights * Length * Radius;

    private static readonly double[] _times = [0.02, 0.76, 1.0];
    private static readonly double[] _start = [0.0, 0.1, 4.995695633459276, 9.995695633459276];
    private static readonly double[] _end = [2.656841488006511, 1.377408311350442, 0.04085034283998918, 6.329963375339014];

    public override string Name => "planar-despin";

    public override string Title => "Planar de-spin";

    public override string Description =>
        "Hub and two weights in the plane, 4 components: unwinding from 0.02 s to 0.76 s, then hinging to 1 s.";

    public override int Index => 0;

    public override ReadOnlySpan<double> Times => _times;

    public override double[] Start => _start;

    public override ReadOnlySpan<int> Places => [0, 1, 2, 3];

    public override ReadOnlySpan<double> End => _end;

    public override void Enter(int phase, Span<double> state)
    {
        if (phase == 1)
        {
            state[1] = 0.0;
        }
    }

    protected override Equations System(int phase) => new(phase == 1);

    internal readonly record struct Equations(bool IsHinging) : IOdeSystem
    {
        public int Dimension => 4;

        public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
        {
            double a = state[1];
            double w = state[2];
            double o = state[3];
            derivatives[0] = w;
            derivatives[1] = o - w;
            if (!IsHinging)
            {
                derivatives[2] = -(Weights * Radius * Radius / A) * a * o * o;
                derivatives[3] = ((o * o) - (2.0 * (o - w) * o)) / a;
                return;
            }

            (double s, double k) = Math.SinCos(a);
            double scale = 1.0 / ((A * B) - (C * s * C * s));
            double r1 = -C * k * o * o;
            double r2 = C * k * w * w;
            derivatives[2] = ((B * r1) - (C * s * r2)) * scale;
            derivatives[3] = ((A * r2) - (C * s * r1)) * scale;
        }
    }
}
