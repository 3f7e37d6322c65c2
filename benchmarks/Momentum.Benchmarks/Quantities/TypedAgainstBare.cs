using BenchmarkDotNet.Attributes;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Benchmarks.Quantities;

/// <summary>
/// Does a type cost anything? The torque of 1,000 forces about a point, turned into inertial axes and summed, with typed
/// vectors and with the same arithmetic written out on bare doubles in the same order and memory layout.
/// </summary>
[MemoryDiagnoser]
public class TypedAgainstBare
{
    private const int Count = 1000;

    private readonly Vector<Length, Body>[] _arms = new Vector<Length, Body>[Count];
    private readonly Vector<Force, Body>[] _forces = new Vector<Force, Body>[Count];
    private readonly Bare[] _bareArms = new Bare[Count];
    private readonly Bare[] _bareForces = new Bare[Count];
    private Rotation<Body, Inertial> _attitude;
    private double _qx;
    private double _qy;
    private double _qz;
    private double _qw;

    [GlobalSetup]
    public void Setup()
    {
        for (int i = 0; i < Count; i++)
        {
            double a = i * 0.01;
            _bareArms[i] = new(Math.Sin(a), Math.Cos(a), 0.1 * a);
            _bareForces[i] = new(10 - a, Math.Cos(2 * a), Math.Sin(3 * a));
            _arms[i] = Vector<Length, Body>.FromSi(_bareArms[i].X, _bareArms[i].Y, _bareArms[i].Z);
            _forces[i] = Vector<Force, Body>.FromSi(_bareForces[i].X, _bareForces[i].Y, _bareForces[i].Z);
        }

        _attitude = Rotation<Body, Inertial>.About(Direction<Body>.Of(1, 2, 3), Angle.FromDegrees(40));
        (_qx, _qy, _qz, _qw) = (_attitude.X, _attitude.Y, _attitude.Z, _attitude.W);
    }

    [Benchmark(Baseline = true)]
    public Bare BareDoubles()
    {
        double sx = 0, sy = 0, sz = 0;
        for (int i = 0; i < Count; i++)
        {
            Bare r = _bareArms[i];
            Bare f = _bareForces[i];
            double x = (r.Y * f.Z) - (r.Z * f.Y);
            double y = (r.Z * f.X) - (r.X * f.Z);
            double z = (r.X * f.Y) - (r.Y * f.X);
            double tx = 2 * ((_qy * z) - (_qz * y));
            double ty = 2 * ((_qz * x) - (_qx * z));
            double tz = 2 * ((_qx * y) - (_qy * x));
            sx += x + (_qw * tx) + (_qy * tz) - (_qz * ty);
            sy += y + (_qw * ty) + (_qz * tx) - (_qx * tz);
            sz += z + (_qw * tz) + (_qx * ty) - (_qy * tx);
        }

        return new(sx, sy, sz);
    }

    [Benchmark]
    public Vector<Torque, Inertial> TypedVectors()
    {
        Vector<Torque, Inertial> sum = default;
        for (int i = 0; i < Count; i++)
        {
            sum += _attitude.Apply(_arms[i].Cross(_forces[i]));
        }

        return sum;
    }

    /// <summary>What a program without types would use.</summary>
    public readonly record struct Bare(double X, double Y, double Z);
}
