using Momentum.Numerics;
using Momentum.Tethers.Deployment;
using Xunit.Abstractions;

namespace Momentum.Tests.Deployment;

/// <summary>The deployment against an independent formulation of the same physics, in asymmetric cases without slack.</summary>
public class IndependentFormulationTests(ITestOutputHelper output)
{
    // Both integrate with local errors of 1e-12 or less a step over some hundred steps; 1e-8 is what the agreement is
    // promised to, the largest seen is printed.
    private const double Promised = 1e-8;

    [Theory]
    [InlineData(false, 50)]
    [InlineData(true, 25)]
    public void Random_asymmetric_deployments_agree_to_the_promised_digits(bool smooth, int cases)
    {
        Random random = new(smooth ? 20261125 : 20261126);
        int compared = 0;
        double worst = 0;
        for (int trial = 0; compared < cases; trial++)
        {
            Assert.True(trial < 400, "Too few of the random cases are free of slack.");
            double? difference = Compare(random, smooth);
            if (difference is { } d)
            {
                compared++;
                worst = Math.Max(worst, d);
                Assert.True(d < Promised, FormattableString.Invariant($"case {trial}: difference {d:E2}"));
            }
        }

        output.WriteLine(FormattableString.Invariant($"largest difference of {compared}: {worst:E2}"));
    }

    private static double? Compare(Random random, bool smooth)
    {
        double Between(double a, double b) => a + ((b - a) * random.NextDouble());
        double radius = Between(0.3, 1.2);
        double hubMass = Between(50, 400);
        double xx = hubMass * radius * radius * Between(0.3, 1.5);
        double yy = xx * Between(0.8, 1.25);
        double zz = Between(0.5, 0.9) * (xx + yy);
        double xy = 0.03 * xx * Between(-1, 1);
        double xz = 0.03 * xx * Between(-1, 1);
        double yz = 0.03 * xx * Between(-1, 1);
        double[] centre = [radius * Between(-0.02, 0.02), radius * Between(-0.02, 0.02), radius * Between(-0.3, 0.3)];
        int count = random.Next(3) switch { 0 => 1, 1 => 2, _ => 4 };
        double spin = Between(3, 10);
        double[] rates = [spin * Between(-0.03, 0.03), spin * Between(-0.03, 0.03), spin];
        CordConstants[] cords = new CordConstants[count];
        CartesianModel.Cord[] other = new CartesianModel.Cord[count];
        for (int i = 0; i < count; i++)
        {
            double mass = hubMass * Between(0.003, 0.02);
            double length = radius * Between(1.5, 4);
            double free = radius * Between(0.15, 0.3);
            double height = radius * Between(-0.1, 0.1);
            double start = (2 * Math.PI * i / count) + Between(-0.1, 0.1);
            double letGo = Between(0.4, 1.6);
            cords[i] = new CordConstants
            {
                Weight = mass,
                Length = length,
                FreeAtStart = free,
                Radius = radius,
                Height = height,
                StartAngle = start,
                LetGo = LetGoKind.CordAngle,
                LetGoValue = letGo,
                Smooth = smooth,
            };
            other[i] = new CartesianModel.Cord
            {
                Mass = mass,
                Length = length,
                Free = free,
                Radius = radius,
                Height = height,
                Start = start,
                LetGo = letGo,
                Smooth = smooth,
            };
        }

        HubConstants hub = new()
        {
            Mass = hubMass,
            Centre = new Vec(centre[0], centre[1], centre[2]),
            Inertia = new Tensor(xx, yy, zz, xy, xz, yz),
        };
        Mechanism mechanism = new(hub, cords);
        Propagation ours = new(mechanism, new Surroundings(), OdeTolerances.Of(1e-12, 1e-13));
        double end = 14 / spin;
        ours.Run([0, 0, 0, 1], new Vec(rates[0], rates[1], rates[2]), end, false, null);
        if (ours.Incidents.Any(i => i.Kind is DeploymentEventKind.CordSlack or DeploymentEventKind.CordTaut))
        {
            return null;
        }

        CartesianModel model = new(hubMass, centre, new double[,] { { xx, xy, xz }, { xy, yy, yz }, { xz, yz, zz } }, other);
        (double[] state, _) = model.Run(rates, end);

        // Relative to the natural scales: spin rate, drum radius, rim speed; directions as they are.
        ReadOnlySpan<double> mine = ours.State;
        double worst = 0;
        for (int k = 0; k < 3; k++)
        {
            worst = Math.Max(worst, Math.Abs(mine[Mechanism.Rates + k] - state[15 + k]) / spin);
        }

        Turn turn = new(mine.Slice(Mechanism.Attitude, 4));
        Vec omega = Vec.Read(mine[Mechanism.Rates..]);
        Vec offset = turn.ToInertial(hub.Centre);
        Vec place = Vec.Read(mine) + offset - Vec.Read(state);
        Vec speed = Vec.Read(mine[Mechanism.Speed..]) + turn.ToInertial(omega.Cross(hub.Centre)) - Vec.Read(state.AsSpan(3));
        Vec axis = turn.ToInertial(new Vec(1, 0, 0)) - new Vec(state[6], state[9], state[12]);
        worst = Math.Max(worst, place.Length / radius);
        worst = Math.Max(worst, speed.Length / (radius * spin));
        worst = Math.Max(worst, axis.Length);
        for (int i = 0; i < count; i++)
        {
            (Vec at, Vec velocity, double time) = ours.Departures[i];
            if (time > 0)
            {
                Vec now = at + ((end - time) * velocity);
                worst = Math.Max(worst, (now - Vec.Read(state.AsSpan(18 + (6 * i)))).Length / radius);
            }
        }

        return worst;
    }
}
