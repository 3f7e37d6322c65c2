using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>
/// Designs such as someone might build, all invented, with cords of 2 to 60 per cent of the weights' mass in two to eight pieces: hubs
/// of 20 kg to 2 t at 30 to 180 rpm, a wobble up to 5°, cords sized to take out the spin within a tenth, some of them elastic,
/// rubbing, hanging, unequal or late. The same number is always the same design.
/// </summary>
internal sealed class PlausibleHeavyCords
{
    private readonly Random _random;

    private PlausibleHeavyCords(int number) => _random = new Random((1_000_003 * number) + 17);

    public static CordDeployment Design(int number) => new PlausibleHeavyCords(number).Draw();

    private CordDeployment Draw()
    {
        double mass = 20 * Math.Exp(Between(0, Math.Log(100)));
        double radius = Between(0.25, 0.6) * Math.Cbrt(mass / 200);
        double zz = mass * radius * radius * Between(0.4, 0.9);
        double xx = zz * Between(0.6, 2.5);
        double yy = xx * Between(0.95, 1.05);
        zz = Math.Min(zz, 0.95 * (xx + yy));
        double spin = Between(30, 180) * Math.PI / 30;
        int count = _random.Next(10) switch { 0 => 3, 1 => 4, _ => 2 };
        double weight = mass * Between(0.001, 0.01);
        int rule = _random.Next(10);
        double ratio = Math.Exp(Between(Math.Log(0.02), Math.Log(0.6)));

        // The classic length for no spin at the end, with a third of the cord's mass at its weight: (L + R)² or L² = R² (1 + I/(m R²)).
        double c = Math.Sqrt(1 + (zz / (count * weight * (1 + (ratio / 3)) * radius * radius)));
        double length = Math.Max(radius, radius * (rule < 3 ? c : c - 1) * Between(0.9, 1.05));
        int segments = _random.Next(6) switch { 0 => 2, 1 => 3, 2 => 8, 3 => 6, _ => 4 };
        bool elastic = _random.Next(3) == 0;
        double stiffness = weight * (1 + ratio) * (length + radius) * spin * spin / Between(0.005, 0.05);
        double damping = Between(0, 0.1);
        double friction = _random.Next(3) == 0 ? Between(0, 0.1) : 0;
        double hanging = _random.Next(3) == 0 ? Between(0, 0.3) * length / segments : 0;
        double height = _random.Next(2) == 0 ? 0 : radius * Between(-0.1, 0.1);
        double offset = radius * (_random.Next(2) == 0 ? 0 : Between(-0.01, 0.01));
        double products = _random.Next(2) == 0 ? 0 : 0.02 * xx;
        double wobble = _random.Next(4) == 0 ? 0 : Between(0, 5);
        bool rig = _random.Next(10) == 0;
        bool unequal = _random.Next(4) == 0;
        double late = _random.Next(5) == 0 ? Between(0, 0.02) : 0;
        Cord[] cords = new Cord[count];
        for (int i = 0; i < count; i++)
        {
            cords[i] = new Cord
            {
                WeightMass = Mass.FromKilograms(weight * (unequal ? Between(0.99, 1.01) : 1)),
                Length = Length.FromMeters(length * (unequal ? Between(0.99, 1.01) : 1)),
                HubRadius = Length.FromMeters(radius),
                PlaneHeight = Length.FromMeters(height),
                StartAngle = Angle.FromRadians(2 * Math.PI * i / count),
                Hanging = Length.FromMeters(hanging),
                LineDensity = LinearDensity.FromKilogramsPerMeter(ratio * weight / length),
                Segments = segments,
                Stiffness = elastic ? Force.FromNewtons(stiffness) : null,
                DampingRatio = elastic ? damping : 0,
                DrumFriction = friction,
                ReleasedAt = Duration.FromSeconds(i == 1 ? late : 0),
                LetGo = LetGoRule(rule),
            };
        }

        var design = new CordDeployment
        {
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(mass),
                Position<Body>.Of(Length.FromMeters(offset), Length.Zero, Length.Zero),
                InertiaTensor<Body>.Of(
                    Inertia(xx), Inertia(yy), Inertia(zz), Inertia(products), Inertia(-0.7 * products), Inertia(0.4 * products), ProductSign.TensorElement)),
            Cords = cords,
            Rates = Vector<RotationalSpeed, Body>.FromSi(0, 0, spin),
            Rig = rig ? new BenchRig { CoulombFriction = Torque.FromNewtonMeters(0.01 * zz * spin) } : null,
            Until = Duration.FromSeconds((1.5 * ((length / radius) + 1) / spin) + late),
        };
        return wobble > 0 && !rig ? design.Wobbling(Angle.FromDegrees(wobble), Angle.FromDegrees(Between(0, 360))) : design;
    }

    private LetGo LetGoRule(int rule) => rule switch
    {
        < 3 => LetGo.Tangent,
        < 8 => LetGo.Radial,
        8 => LetGo.AtCordAngle(Angle.FromDegrees(Between(30, 110))),
        _ => LetGo.Radial.Delayed(Duration.FromMilliseconds(Between(0, 10))),
    };

    private double Between(double a, double b) => a + ((b - a) * _random.NextDouble());

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
