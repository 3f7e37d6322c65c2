using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>The joints of a heavy cord, between which it is straight.</summary>
public class JointsOfCords
{
    // Places are sums of a few metres in turned axes.
    private const double Rounding = 1e-12;

    private static readonly DeploymentResult _heavy = Heavy(12, pieces: 4).Deploy();

    [Fact]
    public void Joints_are_a_piece_apart_and_as_many_as_pieces_have_left_the_drum()
    {
        double piece = _heavy.Deployment.Cords[0].Length.Meters / 4;
        int most = 0;
        foreach (DeploymentState state in _heavy.History(400))
        {
            foreach ((int cord, CordState at) in state.Cords.Index().Where(c => c.Item.Phase is CordPhase.Unwinding or CordPhase.Hinging))
            {
                Position<Inertial>[] line = [at.Root, .. at.Joints, at.Weight];
                double[] pieces = [.. line.Skip(1).Zip(line, (to, from) => (to - from).Magnitude.Meters)];
                Assert.Equal(at.FreeLength.Meters, pieces.Sum(), Rounding);

                // A taut cord that does not stretch; the constraint holds to the tolerance of the integration.
                Assert.All(pieces.Skip(1), p => Assert.Equal(piece, p, 1e-9));
                Assert.Equal(
                    _heavy.Events.Count(e => e.Kind == DeploymentEventKind.CordPiecePeeled && e.Cord == cord && e.Time <= state.Time), at.Joints.Count);
                most = Math.Max(most, at.Joints.Count);
            }
        }

        Assert.Equal(3, most);
    }

    [Fact]
    public void Cord_leaves_the_hub_towards_its_first_joint()
    {
        foreach (DeploymentState state in _heavy.History(100))
        {
            foreach (CordState at in state.Cords.Where(c => c.Joints.Count > 0))
            {
                Vector<Length, Body> first = state.Attitude.Inverse().Apply(at.Joints[0] - at.Root);
                Assert.Equal(Math.Sin(at.OutOfPlane.Radians), first.Z.Meters / first.Magnitude.Meters, 1e-9);
            }
        }
    }

    [Fact]
    public void Held_and_released_cords_and_those_of_one_piece_have_none()
    {
        Assert.All(_heavy.FinalState.Cords, c => Assert.Equal((CordPhase.LetGo, 0), (c.Phase, c.Joints.Count)));
        Assert.All(Heavy(12, pieces: 1).Deploy().History(50), s => Assert.All(s.Cords, c => Assert.Empty(c.Joints)));
        DeploymentResult late = (Heavy(12, pieces: 3) with
        {
            Cords = [.. Heavy(12, pieces: 3).Cords.Select(c => c with { ReleasedAt = Duration.FromSeconds(0.1) })],
        }).Deploy();
        Assert.All(late.At(Duration.FromSeconds(0.05)).Cords, c => Assert.Equal((CordPhase.Held, 0), (c.Phase, c.Joints.Count)));
    }

    [Fact]
    public void Lighter_cord_is_straighter()
    {
        // Without mass nothing pulls a cord aside; the bow grows with the cord's mass, of which there is a hundred times less.
        double heavy = Bow(Heavy(60, pieces: 4).Deploy());
        double light = Bow(Heavy(0.6, pieces: 4).Deploy());
        Assert.InRange(heavy, 1e-3, 0.2);
        Assert.InRange(light, 0, 0.1 * heavy);
    }

    /// <summary>How far a joint of a swinging cord comes from the line between root and weight, m.</summary>
    private static double Bow(DeploymentResult result) => result.History(400)
        .SelectMany(s => s.Cords)
        .Where(c => c.Phase == CordPhase.Hinging)
        .SelectMany(c => c.Joints.Select(j =>
        {
            Vector<Length, Inertial> along = c.Weight - c.Root;
            Vector<Length, Inertial> aside = j - c.Root;
            return aside.Magnitude.Meters * Math.Sin(aside.Direction().AngleTo(along.Direction()).Radians);
        }))
        .Max();

    private static CordDeployment Heavy(double gramsPerMetre, int pieces) => Invented.Deployment with
    {
        Cords = [.. new[] { 0.0, 180 }.Select(a => Invented.Cord(a) with { LineDensity = LinearDensity.FromGramsPerMeter(gramsPerMetre), Segments = pieces })],
    };
}
