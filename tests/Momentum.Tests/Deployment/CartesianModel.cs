using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using Momentum.Numerics;
using Momentum.Tethers.Deployment.Mechanics;

namespace Momentum.Tests.Deployment;

/// <summary>
/// The same physics written a second time, with nothing of the library's but its integrator: weights and lumps of cord as
/// particles with inertial coordinates, the attitude as nine direction cosines, each cord one equation "length of the path
/// from the weight to the cord's end = L", differentiated twice by the machine, and its force as a Lagrange multiplier
/// found with all accelerations from one large linear system (index reduced from 3 to 1); an elastic cord is a force of
/// that path's stretch and its rate. Nothing keeps the lengths but the accuracy of the integration. Grooved or smooth drum
/// about the body's third axis; no slack.
/// </summary>
internal sealed class CartesianModel
{
    private static OdeTolerances Fine => OdeTolerances.Of(1e-13, 1e-14);

    private readonly double _hubMass;
    private readonly double[] _centre;
    private readonly double[,] _inertia;
    private readonly Cord[] _cords;

    public CartesianModel(HubConstants hub, Cord[] cords)
    {
        _hubMass = hub.Mass;
        _centre = [hub.Centre.X, hub.Centre.Y, hub.Centre.Z];
        Tensor t = hub.Inertia;
        _inertia = new[,] { { t.Xx, t.Xy, t.Xz }, { t.Xy, t.Yy, t.Yz }, { t.Xz, t.Yz, t.Zz } };
        _cords = cords;
    }

    /// <summary>One particle of the model and the cord at its inner side; mutable phase.</summary>
    internal sealed class Cord
    {
        public required double Mass;
        public required double Length; // from the particle to the cord's end on the drum, or to the particle it is tied to
        public required double EndAngle; // of the cord's end on the drum
        public required double Radius;
        public required double Height;
        public required double LetGo;
        public required bool Smooth;
        public double Spring; // N/m; zero does not stretch
        public double Damper;
        public double Friction;
        public double FrictionSpeed;
        public int Tied = -1; // index of the particle at the inner end, if that is not the drum
        public int Phase; // 0 unwinding, 1 hinged, 2 released
    }

    // State: hub centre of mass x (3), velocity (3), direction cosines by rows (9), body rates (3), then particles x, v.
    private int Dimension => 18 + (6 * _cords.Length);

    /// <summary>The state in which all turns as one about its common centre of mass at rest, a length of each cord hanging free.</summary>
    public double[] Start(Vec spin, double[] free)
    {
        double[] rates = [spin.X, spin.Y, spin.Z];
        double[] y = new double[Dimension];
        double total = _hubMass + _cords.Sum(c => c.Mass);
        double[] com = new double[3];
        for (int k = 0; k < 3; k++)
        {
            com[k] = _hubMass * _centre[k] / total;
        }

        double[][] at = _cords.Select((c, i) => WeightAtStart(c, free[i])).ToArray();
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

        return y;
    }

    /// <summary>The state at the end time, from one at another time; every cord stays in its phase.</summary>
    public double[] RunPhase(double[] start, double time, double endTime)
    {
        OdeIntegrator<System, NoEvents, DormandPrince853> integrator = new(new System(this), default, Fine);
        integrator.Start(time, start);
        integrator.Run(endTime);
        return integrator.State.ToArray();
    }

    /// <summary>The state at the end time, from one at zero; cords that come to their end hinge, hinged ones let go.</summary>
    public double[] Run(double[] start, double endTime)
    {
        double[] y = [.. start];
        OdeIntegrator<System, Events, DormandPrince853> integrator = new(new System(this), new Events(this), Fine);
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

        return y;
    }

    /// <summary>Largest departure of a cord that does not stretch from its length.</summary>
    public double Misfit(ReadOnlySpan<double> y)
    {
        double worst = 0;
        for (int i = 0; i < _cords.Length; i++)
        {
            if (_cords[i].Phase < 2 && _cords[i].Spring == 0)
            {
                worst = Math.Max(worst, Math.Abs(Geometry(i, y).Length.Value));
            }
        }

        return worst;
    }

    private static void Place(double[] y, int position, int velocity, double[] at, double[] com, double[] w)
    {
        double[] r = [at[0] - com[0], at[1] - com[1], at[2] - com[2]];
        r.CopyTo(y, position);
        Cross(w, r).CopyTo(y, velocity);
    }

    private static double[] WeightAtStart(Cord c, double free)
    {
        (double sin, double cos) = Math.SinCos(c.EndAngle - ((c.Length - free) / c.Radius));
        return [(c.Radius * cos) + (free * sin), (c.Radius * sin) - (free * cos), c.Height];
    }

    /// <summary>What a cord pulls by: of one tied to another particle the inertial difference, else body axes from the hub's centre of mass.</summary>
    private (double[] Gradient, double[] Pull, Jet Length, double[] At, double[] Rate) Geometry(int i, ReadOnlySpan<double> y)
    {
        Cord c = _cords[i];
        if (c.Tied >= 0)
        {
            double[] from = Difference(y, 18 + (6 * i), 18 + (6 * c.Tied));
            double[] speed = Difference(y, 21 + (6 * i), 21 + (6 * c.Tied));
            Jet length = Distance(from, speed) - c.Length;
            double span = length.Value + c.Length;
            double[] along = [from[0] / span, from[1] / span, from[2] / span];
            return (along, along, length, from, speed);
        }

        // s = Qᵀ(x − X), s' = Qᵀ(v − V) − ω × s.
        double[] s = BodyOf(y, 18 + (6 * i), 0);
        double[] v = BodyOf(y, 21 + (6 * i), 3);
        double[] rate = Minus(v, Cross([y[15], y[16], y[17]], s));
        double[] at = [s[0] + _centre[0], s[1] + _centre[1], s[2] + _centre[2]];
        double[] g = new double[3];
        for (int k = 0; k < 3; k++)
        {
            double[] axis = new double[3];
            axis[k] = 1;
            g[k] = PathError(c, at, axis).First;
        }

        return (g, Rubbed(c, g, at, rate), PathError(c, at, rate), s, rate);
    }

    /// <summary>Drum friction inclines the pull against the particle's way off the drum.</summary>
    private static double[] Rubbed(Cord c, double[] g, double[] at, double[] rate)
    {
        if (c.Friction == 0 || c.Phase != 0)
        {
            return g;
        }

        double tangent = Math.Sqrt((at[0] * at[0]) + (at[1] * at[1]) - (c.Radius * c.Radius));
        double angle = c.EndAngle - WoundAngle(c, at[0], at[1], tangent).Value;
        (double sin, double cos) = Math.SinCos(angle);
        double outward = (rate[0] * cos) + (rate[1] * sin);
        double force = c.Friction * c.Radius * tangent / ((c.Radius * c.Radius) + (tangent * tangent)) *
            outward / Math.Sqrt((outward * outward) + (c.FrictionSpeed * c.FrictionSpeed));
        return [g[0] + (force * cos), g[1] + (force * sin), g[2]];
    }

    private static Jet Distance(double[] from, double[] speed)
    {
        Jet x = new(from[0], speed[0], 0);
        Jet y = new(from[1], speed[1], 0);
        Jet z = new(from[2], speed[2], 0);
        return Jet.Sqrt((x * x) + (y * y) + (z * z));
    }

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
        double[] y0 = y.ToArray();
        double[] w0 = [y[15], y[16], y[17]];
        double[] gyro = Cross(w0, Times(_inertia, w0));
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

            (double[] g, double[] pull, Jet length, double[] at, double[] rate) = Geometry(i, y);
            if (c.Spring > 0)
            {
                m[r, r] = 1;
                double tension = impulse ? 0 : (c.Spring * length.Value) + (c.Damper * length.First);
                AddForce(i, pull, at, (row, value) => rhs[row] -= tension * value);
                continue;
            }

            AddForce(i, impulse ? g : pull, at, (row, value) => m[row, r] += value);
            AddForce(i, g, at, (row, value) => m[r, row] += value);
            double carried = 0;
            if (c.Tied < 0)
            {
                carried = Dot(g, Cross(w0, Cross(w0, at))) + (2 * Dot(g, Cross(w0, rate)));
            }

            rhs[r] = impulse ? -length.First : carried - length.Second;
        }

        return m.Solve(rhs);

        // The rows of the equations of motion that a unit of tension enters: the particle's, and those of what holds it.
        void AddForce(int particle, double[] direction, double[] at, Action<int, double> add)
        {
            int p = 6 + (3 * particle);
            int other = _cords[particle].Tied;
            double[] inertial = other >= 0 ? direction : InertialOf(y0, direction);
            double[] moment = Cross(at, direction);
            for (int k = 0; k < 3; k++)
            {
                add(p + k, inertial[k]);
                if (other >= 0)
                {
                    add(6 + (3 * other) + k, -inertial[k]);
                }
                else
                {
                    add(k, -inertial[k]);
                    add(3 + k, -moment[k]);
                }
            }
        }
    }

    private double EventOf(int i, ReadOnlySpan<double> y)
    {
        Cord c = _cords[i];
        if (c.Tied >= 0)
        {
            return 1;
        }

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
        double[] d = Difference(y, a, b);
        return
        [
            (y[6] * d[0]) + (y[9] * d[1]) + (y[12] * d[2]),
            (y[7] * d[0]) + (y[10] * d[1]) + (y[13] * d[2]),
            (y[8] * d[0]) + (y[11] * d[1]) + (y[14] * d[2]),
        ];
    }

    private static double[] Difference(ReadOnlySpan<double> y, int a, int b) =>
        [y[a] - y[b], y[a + 1] - y[b + 1], y[a + 2] - y[b + 2]];

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
