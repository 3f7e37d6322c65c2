using BenchmarkDotNet.Attributes;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Benchmarks.Inertia;

/// <summary>
/// Does the inertia tensor's type cost anything? The angular momenta of 1,000 bodies, each its tensor times its rate,
/// summed, with the types and with the same arithmetic written out on bare doubles in the same order and memory layout.
/// </summary>
[MemoryDiagnoser]
public class TensorAgainstBare
{
    private const int Count = 1000;

    private readonly InertiaTensor<Body>[] _inertias = new InertiaTensor<Body>[Count];
    private readonly Vector<RotationalSpeed, Body>[] _rates = new Vector<RotationalSpeed, Body>[Count];
    private readonly BareTensor[] _bareInertias = new BareTensor[Count];
    private readonly BareVector[] _bareRates = new BareVector[Count];

    [GlobalSetup]
    public void Setup()
    {
        for (int i = 0; i < Count; i++)
        {
            double a = i * 0.01;
            _bareInertias[i] = new(31.5 + Math.Sin(a), 32.1, 18.4 + Math.Cos(a), 0.08 * a, -0.011 * a, 0.05);
            _bareRates[i] = new(Math.Sin(a), Math.Cos(a), 7.5 - a);
            BareTensor t = _bareInertias[i];
            _inertias[i] = InertiaTensor<Body>.Of(Si(t.Xx), Si(t.Yy), Si(t.Zz), Si(t.Xy), Si(t.Xz), Si(t.Yz), ProductSign.TensorElement);
            _rates[i] = Vector<RotationalSpeed, Body>.FromSi(_bareRates[i].X, _bareRates[i].Y, _bareRates[i].Z);
        }
    }

    [Benchmark(Baseline = true)]
    public BareVector BareDoubles()
    {
        double sx = 0, sy = 0, sz = 0;
        for (int i = 0; i < Count; i++)
        {
            BareTensor t = _bareInertias[i];
            BareVector w = _bareRates[i];
            sx += (t.Xx * w.X) + (t.Xy * w.Y) + (t.Xz * w.Z);
            sy += (t.Xy * w.X) + (t.Yy * w.Y) + (t.Yz * w.Z);
            sz += (t.Xz * w.X) + (t.Yz * w.Y) + (t.Zz * w.Z);
        }

        return new(sx, sy, sz);
    }

    [Benchmark]
    public Vector<AngularMomentum, Body> TypedTensor()
    {
        Vector<AngularMomentum, Body> sum = default;
        for (int i = 0; i < Count; i++)
        {
            sum += _inertias[i] * _rates[i];
        }

        return sum;
    }

    private static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);

    /// <summary>What a program without types would use.</summary>
    public readonly record struct BareVector(double X, double Y, double Z);

    /// <summary>What a program without types would use.</summary>
    public readonly record struct BareTensor(double Xx, double Yy, double Zz, double Xy, double Xz, double Yz);
}
