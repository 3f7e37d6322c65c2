using Momentum.Numerics;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// The planar de-spin that all solvers get: two weights of 3 kg on cords of 5.7 m, a hub of 300 kg·m² with a radius of 1.5 m, from
/// 5 rad/s; from 0.02 s, when 0.1 rad are unwound, over the end of unwinding at 0.76 s exactly, to 1 s, while hinging.
/// State: turn of the hub; unwound angle, then cord angle from the tangent; spin; rate of the cord in space.
/// </summary>
/// <remarks>
/// Start: the closed form, rounded. End: a Taylor series with 30 digits (mpmath 1.2.1, odefun) from the rounded start; the closed
/// form agrees with its first phase. Errors are the largest difference of a component, over the largest component.
/// </remarks>
internal static class PlanarDespinProblem
{
    public const double Begin = 0.02;
    public const double Unwound = 0.76;
    public const double End = 1.0;

    private const double Hub = 300.0;
    private const double Radius = 1.5;
    private const double Weights = 6.0;
    private const double Length = 5.7;
    private const double A = Hub + (Weights * Radius * Radius);
    private const double B = Weights * Length * Length;
    private const double C = Weights * Length * Radius;

    private static readonly double[] _start = [0.0, 0.1, 4.995695633459276, 9.995695633459276];
    private static readonly double[] _end = [2.6568414880065113619, 1.3774083113504420569, 0.040850342839989334925, 6.3299633753390143553];

    public static ReadOnlySpan<double> Start
    {
        get { return _start; }
    }

    public static double Error(ReadOnlySpan<double> state)
    {
        double largest = 0.0;
        for (int i = 0; i < 4; i++)
        {
            largest = Math.Max(largest, Math.Abs(state[i] - _end[i]));
        }

        return largest / _end[3];
    }

    public static void Unwinding(ReadOnlySpan<double> y, Span<double> f)
    {
        double a = y[1];
        double w = y[2];
        double o = y[3];
        f[0] = w;
        f[1] = o - w;
        f[2] = -(Weights * Radius * Radius / A) * a * o * o;
        f[3] = ((o * o) - (2.0 * (o - w) * o)) / a;
    }

    public static void Hinging(ReadOnlySpan<double> y, Span<double> f)
    {
        double w = y[2];
        double o = y[3];
        (double s, double k) = Math.SinCos(y[1]);
        double determinant = (A * B) - (C * s * C * s);
        double r1 = -C * k * o * o;
        double r2 = C * k * w * w;
        f[0] = w;
        f[1] = o - w;
        f[2] = ((B * r1) - (C * s * r2)) / determinant;
        f[3] = ((A * r2) - (C * s * r1)) / determinant;
    }

    internal record struct Equations(bool IsHinging) : IOdeSystem
    {
        public readonly int Dimension
        {
            get { return 4; }
        }

        public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
        {
            if (IsHinging)
            {
                Hinging(state, derivatives);
            }
            else
            {
                Unwinding(state, derivatives);
            }
        }
    }
}
