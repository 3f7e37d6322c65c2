using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using Momentum.Numerics;

namespace Momentum.Tests.Deployment;

/// <summary>
/// The same physics written a second time, with nothing of the library's but its integrator: weights as particles with
/// inertial coordinates, the attitude as nine direction cosines, each cord one equation "length of the path from the
/// weight to the cord's end = L", differentiated twice by the machine, and its force as a Lagrange multiplier found
/// with all accelerations from one large linear system (index reduced from 3 to 1). Nothing keeps the lengths but the
/// accuracy of the integration. Grooved or smooth drum about the body's third axis; no slack.
/// </summary>
internal sealed class CartesianModel
{
    private readonly double _hubMass;
    private readonly double[] _centre;
    private readonly double[,] _inertia;
    private readonly Cord[] _cords;

    public CartesianModel(double hubMass, double[] centre, double[,] inertiaAboutCentre, Cord[] cords)
    {
        _hubMass = hubMass;
        _centre = centre;
        _inertia = inertiaAboutCentre;
        _cords = cords;
    }

    /// <summary>One cord of the model; mutable phase.</summary>
    internal sealed class Cord
    {
        public required double Mass;
        public required double Length;
        public required double Free;
        public required double Radius;
        public required double Height;
        public required double Start;
        public required double LetGo;
        public required bool Smooth;
        public int Phase; // 0 unwinding, 1 hinged, 2 released

        public double EndAngle => Start + ((Length - Free) / Radius);
    }

    // State: hub centre of mass x (3), velocity (3), direction cosines by rows (9), body rates (3), then particles x, v.
    private int Dimension => 18 + (6 * _cords.Length);

    public (double[] State, double Time) Run(double[] rates, double endTime)
    {
        double[] y = new double[Dimension];
        double total = _hubMass + _cords.Sum(c => c.Mass);
        double[] com = new double[3];
        for (int k = 0; k < 3; k++)
        {
            com[k] = _hubMass * _centre[k] / total;
        }

        double[][] at = _cords.Select(WeightAtStart).ToArray();
        for (int i = 0; i < _cords.Length; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                com[k] += _cords[i].Mass * at[i][k] / total;
            }
        }

        y[6] = y[10] = y[14] = 1;
        rates.CopyTo(y, 15);
        Place(y, 0, 3, _centre, com, rates);
        for (int i = 0; i < _cords.Length; i++)
        {
            Place(y, 18 + (6 * i), 21 + (6 * i), at[i], com, rates);
        }

        OdeIntegrator<System, Events> integrator = new(new System(this), new Events(this), OdeTolerances.Of(1e-13, 1e-14));
        double time = 0;
        while (time < endTime)
        {
            integrator.Start(time, y);
            StepResult result = integrator.Run(endTime);
            time = integrator.Time;
            integrator.State.CopyTo(y);
            if (result != StepResult.EventReached)
            {
                break;
            }

            foreach (LocatedEvent located in integrator.Events)
            {
                if (located.Time == time)
                {
                    Cord cord = _cords[located.Index];
                    cord.Phase++;
                    if (cord.Phase == 1)
                    {
                        Impulse(y);
                    }
                }
            }
        }

        return (y, time);
    }

    private static void Place(double[] y, int position, int velocity, double[] at, double[] com, double[] w)
    {
        double[] r = [at[0] - com[0], at[1] - com[1], at[2] - com[2]];
        r.CopyTo(y, position);
        Cross(w, r).CopyTo(y, velocity);
    }

    private static double[] WeightAtStart(Cord c) =>
    [
        (c.Radius * Math.Cos(c.Start)) + (c.Free * Math.Sin(c.Start)),
        (c.Radius * Math.Sin(c.Start)) - (c.Free * Math.Cos(c.Start)),
        c.Height,
    ];

    /// <summary>Length of the cord's path less its true length, along a line through w with direction d.</summary>
    private static Jet PathError(Cord c, ReadOnlySpan<double> w, ReadOnlySpan<double> d)
    {
        Jet x = new(w[0], d[0], 0);
        Jet y = new(w[1], d[1], 0);
        Jet z = new Jet(w[2], d[2], 0) - c.Height;
        if (c.Phase == 1)
        {
            Jet dx = x - (c.Radius * Math.Cos(c.EndAngle));
            Jet dy = y - (c.Radius * Math.Sin(c.EndAngle));
            return Jet.Sqrt((dx * dx) + (dy * dy) + (z * z)) - c.Length;
        }

        Jet tangent = Jet.Sqrt((x * x) + (y * y) - (c.Radius * c.Radius));
        Jet wound = WoundAngle(c, x, y, tangent) * c.Radius;
        if (c.Smooth)
        {
            Jet unrolled = tangent + wound;
            return Jet.Sqrt((unrolled * unrolled) + (z * z)) - c.Length;
        }

        return Jet.Sqrt((tangent * tangent) + (z * z)) + wound - c.Length;
    }

    /// <summary>Angle still wound: from the tangent point to the cord's end.</summary>
    private static Jet WoundAngle(Cord c, Jet x, Jet y, Jet tangent)
    {
        // In axes turned to where the tangent point is expected, both arctangents stay on their principal branch.
        Jet trail = Jet.Atan(tangent / c.Radius);
        double guess = Math.Atan2(y.Value, x.Value) + trail.Value;
        double expected = c.EndAngle - (((c.Length - tangent.Value) / c.Radius));
        double turns = Math.Round((expected - guess) / (2 * Math.PI)) * 2 * Math.PI;
        double at = Math.Atan2(y.Value, x.Value);
        (double s, double k) = Math.SinCos(at);
        Jet angle = Jet.Atan(((k * y) - (s * x)) / ((k * x) + (s * y))) + at;
        return c.EndAngle - (angle + trail + turns);
    }

    private void Evaluate(ReadOnlySpan<double> y, Span<double> dy)
    {
        Vector<double> solution = Solve(y, false);
        y.Slice(3, 3).CopyTo(dy);
        for (int k = 0; k < 3; k++)
        {
            dy[3 + k] = solution[k];
            dy[15 + k] = solution[3 + k];
            double a = y[6 + (3 * k)];
            double b = y[7 + (3 * k)];
            double c = y[8 + (3 * k)];
            dy[6 + (3 * k)] = (b * y[17]) - (c * y[16]);
            dy[7 + (3 * k)] = (c * y[15]) - (a * y[17]);
            dy[8 + (3 * k)] = (a * y[16]) - (b * y[15]);
        }

        for (int i = 0; i < _cords.Length; i++)
        {
            y.Slice(21 + (6 * i), 3).CopyTo(dy[(18 + (6 * i))..]);
            for (int k = 0; k < 3; k++)
            {
                dy[21 + (6 * i) + k] = solution[6 + (3 * i) + k];
            }
        }
    }

    private void Impulse(double[] y)
    {
        Vector<double> jump = Solve(y, true);
        for (int k = 0; k < 3; k++)
        {
            y[3 + k] += jump[k];
            y[15 + k] += jump[3 + k];
            for (int i = 0; i < _cords.Length; i++)
            {
                y[21 + (6 * i) + k] += jump[6 + (3 * i) + k];
            }
        }
    }

    /// <summary>Accelerations and multipliers, or for an impulse the jumps of velocity that make every length rate zero.</summary>
    private Vector<double> Solve(ReadOnlySpan<double> y, bool impulse)
    {
        int n = _cords.Length;
        int size = 6 + (4 * n);
        DenseMatrix m = new(size, size);
        DenseVector rhs = new(size);
        double[] w = [y[15], y[16], y[17]];
        double[] spin = Times(_inertia, w);
        double[] gyro = Cross(w, spin);
        for (int k = 0; k < 3; k++)
        {
            m[k, k] = _hubMass;
            for (int l = 0; l < 3; l++)
            {
                m[3 + k, 3 + l] = _inertia[k, l];
            }

            rhs[3 + k] = impulse ? 0 : -gyro[k];
        }

        for (int i = 0; i < n; i++)
        {
            Cord c = _cords[i];
            int p = 6 + (3 * i);
            int r = 6 + (3 * n) + i;
            for (int k = 0; k < 3; k++)
            {
                m[p + k, p + k] = c.Mass;
            }

            if (c.Phase == 2)
            {
                m[r, r] = 1;
                continue;
            }

            // From the hub's centre of mass, body axes: s = Qᵀ(x − X), s' = Qᵀ(v − V) − ω × s.
            double[] s = BodyOf(y, 18 + (6 * i), 0);
            double[] v = BodyOf(y, 21 + (6 * i), 3);
            double[] rate = Minus(v, Cross(w, s));
            double[] at = [s[0] + _centre[0], s[1] + _centre[1], s[2] + _centre[2]];
            double[] g = new double[3];
            for (int k = 0; k < 3; k++)
            {
                double[] axis = new double[3];
                axis[k] = 1;
                g[k] = PathError(c, at, axis).First;
            }

            Jet along = PathError(c, at, rate);
            double[] gi = InertialOf(y, g);
            double[] moment = Cross(s, g);
            for (int k = 0; k < 3; k++)
            {
                m[p + k, r] = gi[k];
                m[k, r] = -gi[k];
                m[3 + k, r] = -moment[k];
                m[r, p + k] = gi[k];
                m[r, k] = -gi[k];
                m[r, 3 + k] = -moment[k];
            }

            double[] centrifugal = Cross(w, Cross(w, s));
            double[] coriolis = Cross(w, rate);
            rhs[r] = impulse
                ? -along.First
                : Dot(g, centrifugal) + (2 * Dot(g, coriolis)) - along.Second;
        }

        return m.Solve(rhs);
    }

    private double EventOf(int i, ReadOnlySpan<double> y)
    {
        Cord c = _cords[i];
        double[] s = BodyOf(y, 18 + (6 * i), 0);
        double x = s[0] + _centre[0];
        double z = s[1] + _centre[1];
        switch (c.Phase)
        {
            case 0:
                double tangent = Math.Sqrt((x * x) + (z * z) - (c.Radius * c.Radius));
                return -WoundAngle(c, x, z, tangent).Value;
            case 1:
                double dx = x - (c.Radius * Math.Cos(c.EndAngle));
                double dy = z - (c.Radius * Math.Sin(c.EndAngle));
                double outward = (dx * Math.Cos(c.EndAngle)) + (dy * Math.Sin(c.EndAngle));
                double trailing = (dx * Math.Sin(c.EndAngle)) - (dy * Math.Cos(c.EndAngle));
                return ((outward * Math.Cos(c.LetGo)) - (trailing * Math.Sin(c.LetGo))) / c.Length;
            default:
                return 1;
        }
    }

    private static double[] BodyOf(ReadOnlySpan<double> y, int a, int b)
    {
        double[] d = [y[a] - y[b], y[a + 1] - y[b + 1], y[a + 2] - y[b + 2]];
        return
        [
            (y[6] * d[0]) + (y[9] * d[1]) + (y[12] * d[2]),
            (y[7] * d[0]) + (y[10] * d[1]) + (y[13] * d[2]),
            (y[8] * d[0]) + (y[11] * d[1]) + (y[14] * d[2]),
        ];
    }

    private static double[] InertialOf(ReadOnlySpan<double> y, double[] g) =>
    [
        (y[6] * g[0]) + (y[7] * g[1]) + (y[8] * g[2]),
        (y[9] * g[0]) + (y[10] * g[1]) + (y[11] * g[2]),
        (y[12] * g[0]) + (y[13] * g[1]) + (y[14] * g[2]),
    ];

    private static double[] Times(double[,] a, double[] v) =>
    [
        (a[0, 0] * v[0]) + (a[0, 1] * v[1]) + (a[0, 2] * v[2]),
        (a[1, 0] * v[0]) + (a[1, 1] * v[1]) + (a[1, 2] * v[2]),
        (a[2, 0] * v[0]) + (a[2, 1] * v[1]) + (a[2, 2] * v[2]),
    ];

    private static double[] Cross(double[] a, double[] b) =>
        [(a[1] * b[2]) - (a[2] * b[1]), (a[2] * b[0]) - (a[0] * b[2]), (a[0] * b[1]) - (a[1] * b[0])];

    private static double[] Minus(double[] a, double[] b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

    private static double Dot(double[] a, double[] b) => (a[0] * b[0]) + (a[1] * b[1]) + (a[2] * b[2]);

    private readonly struct System(CartesianModel model) : IOdeSystem
    {
        public int Dimension => model.Dimension;

        public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives) => model.Evaluate(state, derivatives);
    }

    private readonly struct Events(CartesianModel model) : IEventFunctions
    {
        public int Count => model._cords.Length;

        public EventRule Rule(int index) => new(EventDirection.Rising, true);

        public void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
        {
            for (int i = 0; i < values.Length; i++)
            {
                values[i] = model.EventOf(i, state);
            }
        }
    }
}
