using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Designs;

/// <summary>
/// Deployments in three dimensions at random, of plausible sizes: wobble, unbalance, cords with mass, stretch and friction, drums
/// out of plane, late, jammed and stuck cords, rigs.
/// </summary>
internal static class SpaceDesigns
{
    /// <summary>Draws a deployment and computes it.</summary>
    internal static void Count(Tally tally, int seed, int number)
    {
        Draw draw = new(seed, number);
        double radius = draw.Ratio(0.05, 1.5);
        double mass = draw.Ratio(1, 2000);
        double spin = draw.Ratio(0.5, 40) * draw.Of(1, 1, 1, -1);
        double x = mass * radius * radius * draw.Between(0.3, 1.5);
        double y = x * draw.Between(0.85, 1.15);
        double z = (x + y) * draw.Between(0.25, 0.95);
        double product = draw.Chance(0.4) ? 0 : 0.02 * z;
        int count = draw.Of(1, 2, 2, 2, 2, 3, 4);
        bool massive = draw.Chance(0.3);
        bool elastic = draw.Chance(0.4);
        double weight = z / (radius * radius) * draw.Ratio(2e-3, 0.1) / count;
        double length = Math.Sqrt(z / (count * weight)) * draw.Between(0.3, 1.6);
        double density = massive ? weight / length * draw.Ratio(0.01, 0.6) : 0;
        int segments = massive ? draw.Of(1, 2, 2, 4) : 1;

        // Stretched by 0.1 to 5 % by the pull of the weight at its full radius.
        double stiffness = weight * (radius + length) * spin * spin / draw.Ratio(1e-3, 0.05);
        LetGo release = draw.Of(0, 1, 2, 3, 4) switch
        {
            0 => LetGo.Tangent,
            1 or 2 => LetGo.Radial,
            3 => LetGo.AtCordAngle(Angle.FromDegrees(draw.Between(-20, 110))),
            _ => LetGo.AtTime(Duration.FromSeconds(length / radius / Math.Abs(spin) * draw.Between(0.3, 1.3))),
        };
        bool rig = draw.Chance(0.1);
        double wobble = draw.Chance(0.3) || rig ? 0 : draw.Ratio(1e-3, 0.2);
        double direction = draw.Between(0, 2 * Math.PI);
        double height = draw.Chance(0.5) ? 0 : 0.2 * radius * draw.Between(-1, 1);
        double offset = draw.Chance(0.5) ? 0 : 0.01 * radius * draw.Between(-1, 1);
        double friction = draw.Chance(0.6) ? 0 : draw.Between(0, 0.2);
        double damping = draw.Chance(0.5) ? 0 : draw.Ratio(0.01, 0.5);
        DrumSurface surface = massive || draw.Chance(0.5) ? DrumSurface.Smooth : DrumSurface.Grooved;
        bool late = draw.Chance(0.15);
        bool jammed = draw.Chance(0.05);
        bool stuck = draw.Chance(0.05);
        double hanging = draw.Chance(0.7) ? 0 : length / segments * draw.Between(0, 0.1);
        double scatter = draw.Chance(0.5) ? 0 : 1e-2;
        Cord[] cords = new Cord[count];
        for (int i = 0; i < count; i++)
        {
            cords[i] = new Cord
            {
                WeightMass = Mass.FromKilograms(weight * (1 + (scatter * draw.Between(-1, 1)))),
                Length = Length.FromMeters(length * (1 + (scatter * draw.Between(-1, 1)))),
                HubRadius = Length.FromMeters(radius),
                PlaneHeight = Length.FromMeters(height),
                StartAngle = Angle.FromRadians((2 * Math.PI * i / count) + (scatter * draw.Between(-1, 1))),
                Hanging = Length.FromMeters(hanging),
                LineDensity = LinearDensity.FromKilogramsPerMeter(density),
                Segments = segments,
                Stiffness = elastic ? Force.FromNewtons(stiffness) : null,
                DampingRatio = elastic ? damping : 0,
                DrumFriction = friction,
                Surface = surface,
                ReleasedAt = stuck && i == 0 ? null : Duration.FromSeconds(late && i == 0 ? 0.1 / Math.Abs(spin) : 0),
                JamsAt = jammed && i == 0 ? Length.FromMeters(0.6 * length) : null,
                LetGo = release,
            };
        }

        string kind = $"{(massive ? $"cords of {segments} pieces" : "cords without mass")}{(elastic ? ", elastic" : "")}{(rig ? ", on a rig" : "")}";
        tally.Count(kind, number, null, () =>
        {
            CordDeployment deployment = new()
            {
                Hub = MassProperties<Body>.Of(
                    Mass.FromKilograms(mass),
                    Position<Body>.Of(Length.FromMeters(offset), Length.Zero, Length.Zero),
                    InertiaTensor<Body>.Of(Inertia(x), Inertia(y), Inertia(z), Inertia(product), Inertia(product), Inertia(0), ProductSign.TensorElement)),
                Cords = cords,
                Rates = Vector<RotationalSpeed, Body>.FromSi(0, 0, spin),
                Until = Duration.FromSeconds(((length / radius) + (2 * Math.PI)) / Math.Abs(spin) * 1.5),
                Rig = rig ? new BenchRig() : null,
            };
            return Judge(wobble == 0 ? deployment : deployment.Wobbling(Angle.FromRadians(wobble), Angle.FromRadians(direction)));
        });
    }

    private static Finding Judge(CordDeployment deployment)
    {
        DeploymentResult result = deployment.Deploy();
        List<string> wrong = [];
        foreach (Duration time in (ReadOnlySpan<Duration>)[Duration.Zero, result.End * 0.37, result.End])
        {
            DeploymentState state = result.At(time);
            Require(double.IsFinite(state.Spin.RadiansPerSecond) && double.IsFinite(state.NutationAngle.Radians), "a state is not finite");
        }

        Require(result.PeakTensions.All(peak => double.IsFinite(peak.Tension.Newtons) && peak.Tension.Newtons >= 0), "a peak tension is not finite or negative");
        Require(result.Departures.All(let => double.IsFinite(let.Energy.Joules) && let.Energy.Joules > 0), "a weight leaves without energy");
        Require(double.IsFinite(result.After.LargestNutation.Radians), "the wobble is not finite");
        return new Finding(result.Departures.Count == deployment.Cords.Count ? "all let go" : "computed, not all let go")
        {
            Closure = result.Ledger.Closure,
            Wrong = wrong.Count == 0 ? null : $"{string.Join("; ", wrong)}: {deployment}",
            Work = (result.StepTimes.Count, "steps"),
        };

        void Require(bool holds, string what)
        {
            if (!holds && !wrong.Contains(what))
            {
                wrong.Add(what);
            }
        }
    }

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
