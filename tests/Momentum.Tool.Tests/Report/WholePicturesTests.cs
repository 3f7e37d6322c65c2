using Momentum.Cases.Report.Composing;
using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tool.Tests.Report;

/// <summary>The frames of the animation are the motion in three dimensions that the library computed.</summary>
public sealed class WholePicturesTests
{
    // Quaternions, square roots and sums of numbers of about 4 m.
    private const double Rounding = 1e-9;

    private static readonly DeploymentResult _result = SampleDeployment.Unbalanced().Deploy();
    private static readonly Unwinding _motion = WholePictures.Of(_result).Unwinding;

    [Fact]
    public void Angles_and_lengths_of_every_frame_are_those_of_the_state_at_its_time()
    {
        // Angles and distances do not depend on axes, so that they check the change of axes too.
        foreach (UnwindingFrame frame in _motion.Frames)
        {
            DeploymentState state = _result.At(Duration.FromSeconds(frame.Time));
            Direction<StageAxes> axis = frame.Attitude.Apply(Direction<HubAxes>.ZAxis);
            double toMomentum = axis.AngleTo(frame.Momentum.Direction).Degrees;
            Assert.Equal(state.AxisTilt.Degrees, axis.AngleTo(Direction<StageAxes>.ZAxis).Degrees, 1e-6);
            Assert.Equal(state.NutationAngle.Degrees, Math.Min(toMomentum, 180 - toMomentum), 1e-6);
            Assert.Equal(state.NutationAngle.Degrees, frame.Wobble!.Value.NutationAngle, Rounding);
            Position<Inertial> centre = state.Origin + state.Attitude.Apply(_result.Deployment.Hub.CentreOfMass.FromOrigin);
            for (int i = 0; i < 2; i++)
            {
                Assert.Equal((state.Cords[i].Weight - centre).Magnitude.Meters, frame.Cords[i].Weight.FromOrigin.Magnitude.Meters, Rounding);
                if (state.Cords[i].Phase is CordPhase.Unwinding or CordPhase.Hinging)
                {
                    Position<StageAxes> root = _motion.Root(frame, i);
                    Assert.Equal((state.Cords[i].Root - centre).Magnitude.Meters, root.FromOrigin.Magnitude.Meters, Rounding);
                    Assert.Equal(state.Cords[i].FreeLength.Meters, (frame.Cords[i].Weight - root).Magnitude.Meters, Rounding);
                }
            }

            Assert.Equal(
                (state.Cords[0].Weight - state.Cords[1].Weight).Magnitude.Meters,
                (frame.Cords[0].Weight - frame.Cords[1].Weight).Magnitude.Meters,
                Rounding);
        }
    }

    [Fact]
    public void Straight_lines_between_frames_keep_to_the_path()
    {
        // A turn by 4° cuts a corner by 6e-4 of the radius, a twentieth of the size of a weight on the stage. The library is asked
        // between the frames.
        double reach = _motion.Frames.SelectMany(f => f.Cords).Where(c => c.Attached).Max(c => c.Weight.FromOrigin.Magnitude.Meters);
        for (int i = 1; i < _motion.Frames.Count; i++)
        {
            (UnwindingFrame from, UnwindingFrame to) = (_motion.Frames[i - 1], _motion.Frames[i]);
            DeploymentState state = _result.At(Duration.FromSeconds((from.Time + to.Time) / 2));
            Position<Inertial> centre = state.Origin + state.Attitude.Apply(_result.Deployment.Hub.CentreOfMass.FromOrigin);
            for (int c = 0; c < 2; c++)
            {
                Vector<Length, StageAxes> middle = (from.Cords[c].Weight.FromOrigin + to.Cords[c].Weight.FromOrigin) * 0.5;
                Vector<Length, StageAxes> there = new StageTurn(_result.Deployment).Inertial.Apply(state.Cords[c].Weight - centre);
                Assert.True((middle - there).Magnitude.Meters <= 8e-4 * reach, $"{(middle - there).Magnitude} off at {state.Time}");
            }
        }
    }

    [Fact]
    public void Frames_are_few_and_both_sides_of_every_event_are_among_them()
    {
        Assert.InRange(_motion.Frames.Count, 200, 640);
        foreach (DeploymentEvent happened in _result.Events.Where(e => e.Kind == DeploymentEventKind.LetGo))
        {
            int at = _motion.Frames.Index().First(f => f.Item.Time == happened.Time.Seconds).Index;
            Assert.Equal(CordHold.Gone, _motion.Frames[at].Cords[happened.Cord!.Value].Hold);
            Assert.Equal(CordHold.Taut, _motion.Frames[at - 1].Cords[happened.Cord!.Value].Hold);
            Assert.Equal(happened.Time.Seconds, _motion.Frames[at - 1].Time, 1e-8);
        }
    }

    [Fact]
    public void Cord_is_wound_from_its_root_to_its_end_on_the_hub()
    {
        double length = _result.Deployment.Cords[0].Length.Meters;
        foreach (UnwindingFrame frame in _motion.Frames)
        {
            DeploymentState state = _result.At(Duration.FromSeconds(frame.Time));
            for (int i = 0; i < 2; i++)
            {
                double wound = _motion.Drums[i].Radius * (_motion.Drums[i].EndAngle - frame.Cords[i].RootAngle);
                if (state.Cords[i].Phase is CordPhase.Unwinding)
                {
                    Assert.Equal(length - state.Cords[i].FreeLength.Meters, wound, 1e-8);
                }
                else if (state.Cords[i].Phase is CordPhase.Hinging)
                {
                    Assert.Equal(0, wound, 1e-8);
                }
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Animation_is_the_same_whichever_body_axis_the_spin_is_about(int spinAxis)
    {
        // The steps differ in their last bits, and the times of events with them.
        DeploymentResult other = SampleDeployment.Unbalanced(spinAxis).Deploy();
        UnwindingFrame[] frames = [.. WholePictures.Of(other).Unwinding.Frames.Where(f => f.Time < 1)];
        StageTurn turn = new(_result.Deployment);
        foreach (UnwindingFrame frame in frames)
        {
            DeploymentState state = _result.At(Duration.FromSeconds(frame.Time));
            Position<Inertial> centre = state.Origin + state.Attitude.Apply(_result.Deployment.Hub.CentreOfMass.FromOrigin);
            Assert.Equal(0, (turn.Inertial.Apply(state.Cords[0].Weight - centre) - frame.Cords[0].Weight.FromOrigin).Magnitude.Meters, 1e-6);
        }
    }

    [Fact]
    public void In_the_planar_limit_the_weights_fly_where_the_closed_form_has_them()
    {
        // The reference is exact while unwinding; the library agrees to its tolerance.
        PlanarMotion reference = SampleDeployment.Planar;
        Unwinding motion = WholePictures.Of(SampleDeployment.PlanarAndSymmetric.Deploy()).Unwinding;
        double c = 1 + (reference.Inertia / (reference.Weights * reference.Radius * reference.Radius));
        foreach (UnwindingFrame frame in motion.Frames.Where(f => f.Time < reference.UnwindingEnds))
        {
            double phi = reference.InitialSpin * frame.Time;
            double tangent = 2 * Math.Sqrt(c) * Math.Atan(phi / Math.Sqrt(c));
            Position<StageAxes> weight = frame.Cords[0].Weight;
            Assert.Equal(reference.Radius * (Math.Cos(tangent) + (phi * Math.Sin(tangent))), weight.X.Meters, 1e-8);
            Assert.Equal(reference.Radius * (Math.Sin(tangent) - (phi * Math.Cos(tangent))), weight.Y.Meters, 1e-8);
            Assert.Equal(0, weight.Z.Meters, 1e-8);
        }

        Assert.True(motion.CordsAreAlike);
        Assert.Equal(["unwinding", "hinging", "free flight"], motion.Phases.Select(p => p.Name));
    }

    [Fact]
    public void Cords_let_go_at_the_tangent_do_not_hinge()
    {
        Unwinding motion = WholePictures.Of(SampleDeployment.Tangent.Deploy()).Unwinding;

        Assert.Equal(["unwinding", "free flight"], motion.Phases.Select(p => p.Name));
        Assert.Equal(SampleDeployment.Planar.UnwindingEnds, motion.Phases[1].Start, 1e-8);
    }

    [Fact]
    public void Heavy_cord_is_drawn_through_its_joints_and_as_long_as_it_is()
    {
        DeploymentResult result = SampleDeployment.Heavy.Deploy();
        Unwinding motion = WholePictures.Of(result).Unwinding;
        double longest = 0;
        foreach (UnwindingFrame frame in motion.Frames)
        {
            DeploymentState state = result.At(Duration.FromSeconds(frame.Time));
            Position<Inertial> centre = state.Origin + state.Attitude.Apply(result.Deployment.Hub.CentreOfMass.FromOrigin);
            foreach ((int cord, CordFrame drawn) in frame.Cords.Index().Where(c => c.Item.Attached))
            {
                Assert.Equal(3, drawn.Joints.Count);
                Position<StageAxes>[] line = [motion.Root(frame, cord), .. drawn.Joints, drawn.Weight];
                double length = line.Skip(1).Zip(line, (to, from) => (to - from).Magnitude.Meters).Sum();
                Assert.Equal(state.Cords[cord].FreeLength.Meters, length, Rounding);
                longest = Math.Max(longest, length - (drawn.Weight - line[0]).Magnitude.Meters);
                Assert.Equal(
                    state.Cords[cord].Joints.Select(j => (j - centre).Magnitude.Meters),
                    drawn.Joints.TakeLast(state.Cords[cord].Joints.Count).Select(j => j.FromOrigin.Magnitude.Meters),
                    (a, b) => Math.Abs(a - b) < Rounding);
            }
        }

        // It is bent, or this says nothing.
        Assert.True(longest > 1e-4, $"longer by {longest} m than straight");
    }

    [Fact]
    public void Released_weight_comes_to_an_end_where_it_lands_in_the_room()
    {
        DeploymentResult result = SampleDeployment.OnUnbalancedRig.Deploy();
        Unwinding motion = WholePictures.Of(result).Unwinding;
        Assert.Equal(2, result.Landings.Count);
        foreach (Landing landing in result.Landings)
        {
            // The stage stands still on the bearing; upward is its third axis.
            Position<StageAxes> place = motion.Room!.Landings[landing.Cord]!.Value;
            double aside = Math.Sqrt((place.X.Meters * place.X.Meters) + (place.Y.Meters * place.Y.Meters));
            double height = place.Z.Meters - motion.Room.Bearing.Z.Meters;
            Assert.Equal(landing.OnFloor ? -1.5 : 7, landing.OnFloor ? height : aside, Rounding);
            UnwindingFrame[] after = [.. motion.Frames.Where(f => f.Time >= landing.Time.Seconds)];
            Assert.NotEmpty(after);
            Assert.All(after, f => Assert.Equal(place, f.Cords[landing.Cord].Weight));
        }
    }

    [Fact]
    public void On_a_rig_the_hub_turns_about_the_bearing_and_the_room_stands_still()
    {
        Unwinding motion = WholePictures.Of(SampleDeployment.OnUnbalancedRig.Deploy()).Unwinding;

        Assert.Equal((0, 0), (motion.Hub.AxisX, motion.Hub.AxisY));
        Assert.False(motion.Wobbles);
        foreach (UnwindingFrame frame in motion.Frames)
        {
            Position<StageAxes> root = motion.Root(frame, 0);
            Assert.Equal(0.43, Math.Sqrt(Math.Pow(root.X.Meters, 2) + Math.Pow(root.Y.Meters, 2)), Rounding);
        }
    }

    [Fact]
    public void Cords_that_stay_on_end_in_no_free_flight()
    {
        Unwinding motion = WholePictures.Of(SampleDeployment.Stuck.Deploy()).Unwinding;

        Assert.Null(motion.LetGo);
        Assert.Equal(["unwinding", "hinging"], motion.Phases.Select(p => p.Name));
        Assert.True(motion.Frames.All(f => f.Cords[1].Attached));
        Assert.False(motion.CordsAreAlike);
    }
}
