using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>How fast the weights are, held, on their cords and after.</summary>
public class SpeedsOfWeights
{
    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    public void Velocity_is_the_change_of_place_in_every_phase(double gramsPerMetre)
    {
        CordDeployment whole = LawsOfDeployment.With(c => c with { ReleasedAt = Duration.FromSeconds(0.1), LineDensity = LinearDensity.FromGramsPerMeter(gramsPerMetre), Segments = 3 });
        AssertChangeOfPlace(whole.Deploy());
    }

    [Fact]
    public void On_a_rig_a_released_weight_falls_and_its_velocity_with_it()
    {
        CordDeployment rig = Invented.Deployment with
        {
            Rates = Invented.Rates(0, 0, 7.5),
            Rig = new BenchRig { Walls = Length.FromMeters(6) },
        };
        AssertChangeOfPlace(rig.Deploy());
    }

    [Fact]
    public void Landing_has_the_speed_that_the_weight_has_there()
    {
        DeploymentResult result = (Invented.Deployment with
        {
            Rates = Invented.Rates(0, 0, 7.5),
            Rig = new BenchRig { Walls = Length.FromMeters(6) },
        }).Deploy();

        Assert.Equal(2, result.Landings.Count);
        Assert.All(result.Landings, l =>
            Assert.Equal(l.Speed.MetersPerSecond, result.At(l.Time).Cords[l.Cord].WeightVelocity.Magnitude.MetersPerSecond, 1e-12 * l.Speed.MetersPerSecond));
    }

    private static void AssertChangeOfPlace(DeploymentResult result)
    {
        // Central difference: of third derivatives of some 1e3 m/s³ it leaves (1e-5 s)²/6 of them, and of places known to 1e-13 m
        // some 1e-8 m/s. Across an event the acceleration jumps, and a mean of two is no derivative.
        const double Half = 1e-5;
        HashSet<CordPhase> seen = [];
        foreach (double time in Enumerable.Range(1, 60).Select(i => result.End.Seconds * i / 61))
        {
            if (result.Events.Any(e => Math.Abs(e.Time.Seconds - time) < 2 * Half))
            {
                continue;
            }

            DeploymentState before = result.At(Duration.FromSeconds(time - Half));
            DeploymentState now = result.At(Duration.FromSeconds(time));
            DeploymentState after = result.At(Duration.FromSeconds(time + Half));
            for (int i = 0; i < now.Cords.Count; i++)
            {
                Vector<Length, Inertial> way = after.Cords[i].Weight - before.Cords[i].Weight;
                Vector<Speed, Inertial> velocity = now.Cords[i].WeightVelocity;
                seen.Add(now.Cords[i].Phase);
                Assert.Equal(way.X.Meters / (2 * Half), velocity.X.MetersPerSecond, 1e-6);
                Assert.Equal(way.Y.Meters / (2 * Half), velocity.Y.MetersPerSecond, 1e-6);
                Assert.Equal(way.Z.Meters / (2 * Half), velocity.Z.MetersPerSecond, 1e-6);
            }
        }

        Assert.Contains(CordPhase.Hinging, seen);
        Assert.Contains(CordPhase.LetGo, seen);
    }
}
