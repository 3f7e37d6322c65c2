using Momentum.Frames;
using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// Tells the state at any time of a recorded deployment, to the accuracy of the deployment itself: by integrating again from
/// the step before, in the phases of that step. One thread at a time.
/// </summary>
internal sealed class Replay
{
    private readonly CordDeployment _deployment;
    private readonly Recording _recording;
    private readonly HubConstants _hub;
    private readonly CordConstants[] _cords;

    // Of each cord's weight; of no meaning where it has not left.
    private readonly Flight[] _flights;

    private readonly Mechanism _mechanism;
    private readonly OdeIntegrator<MechanismOde, NoEvents, DormandPrince853> _integrator;
    private readonly double[] _state;
    private int _segment = -1;

    public Replay(
        CordDeployment deployment, Recording recording, HubConstants hub, CordConstants[] cords, Flight[] flights, Func<Mechanism, OdeTolerances> tolerances)
    {
        _deployment = deployment;
        _recording = recording;
        _hub = hub;
        _cords = cords;
        _flights = flights;
        _mechanism = new Mechanism(hub, cords);
        _integrator = new OdeIntegrator<MechanismOde, NoEvents, DormandPrince853>(new MechanismOde(_mechanism), default, tolerances(_mechanism));
        _state = new double[_mechanism.Dimension];
    }

    /// <summary>The state at a time, s.</summary>
    public DeploymentState StateAt(double time)
    {
        GoTo(time);
        ReadOnlySpan<double> state = _state;
        ReadOnlySpan<double> q = state.Slice(Mechanism.Attitude, 4);
        double length = Math.Sqrt((q[0] * q[0]) + (q[1] * q[1]) + (q[2] * q[2]) + (q[3] * q[3]));
        Vec omega = Vec.Read(state[Mechanism.Rates..]);
        Turn turn = new(q);
        Rotation<Body, Inertial> start = _deployment.Attitude;
        Vec axisThen = new Turn([start.X, start.Y, start.Z, start.W]).ToInertial(_hub.Axis);
        CordState[] cords = new CordState[_cords.Length];
        for (int i = 0; i < cords.Length; i++)
        {
            cords[i] = CordAt(i, turn, time);
        }

        return new DeploymentState
        {
            Time = Duration.FromSeconds(time),
            Spin = RotationalSpeed.FromRadiansPerSecond(omega.Dot(_hub.Axis)),
            TransverseRate = RotationalSpeed.FromRadiansPerSecond(omega.Cross(_hub.Axis).Length),
            Rates = Vector<RotationalSpeed, Body>.FromSi(omega),
            Attitude = Rotation<Body, Inertial>.FromQuaternion(q[0] / length, q[1] / length, q[2] / length, q[3] / length),
            Origin = At(Vec.Read(state)),
            OriginVelocity = Vector<Speed, Inertial>.FromSi(Vec.Read(state[Mechanism.Speed..])),
            HubAngularMomentum = Vector<AngularMomentum, Inertial>.FromSi(Weighing.HubMomentum(_mechanism, state)),
            NutationAngle = Angle.FromRadians(Survey.Nutation(_mechanism, state)),
            AxisTilt = Angle.FromRadians(turn.ToInertial(_hub.Axis).AngleTo(axisThen)),
            Energy = DeploymentEnergy.Of(Weighing.Of(_mechanism, state)),
            Cords = cords,
        };
    }

    /// <summary>The highest tension of a cord about a peak that was seen, up to the end.</summary>
    public PeakTension Highest(int cord, Survey.Peak peak, double end)
    {
        const int Sections = 40;
        double until = Math.Min(peak.Until, end);
        (double time, double tension) = (peak.Time, peak.Tension);
        if (until > peak.From)
        {
            // Whatever the tension does there: a peak may also be a jump at an event, where the search then stays.
            (double place, double highest) = GoldenSection.Highest((This: this, cord), static (s, at) => s.This.TensionAt(s.cord, at), peak.From, until, Sections);
            (time, tension) = highest > tension ? (place, highest) : (time, tension);
        }

        // At let-go the cord is gone; what it was just before counts.
        CordState then = CordJustAt(cord, time) is { Phase: not CordPhase.LetGo } there ? there : CordJustAt(cord, Math.BitDecrement(time));
        return new PeakTension(cord, Force.FromNewtons(tension), Duration.FromSeconds(time), then.Phase, then.FreeLength, then.CordAngle);
    }

    private CordState CordJustAt(int cord, double time)
    {
        GoTo(time);
        return CordAt(cord, new Turn(_state.AsSpan(Mechanism.Attitude, 4)), time);
    }

    // The mechanism is then evaluated there.
    private void GoTo(double time)
    {
        int step = _recording.StepAt(time);
        int segment = _recording.SegmentOf(step);
        if (segment != _segment)
        {
            (LinkPhase[] phases, double bearingSign) = _recording.Segment(segment);
            _mechanism.TakePhases(phases, bearingSign);
            _segment = segment;
        }

        _recording.State(step).CopyTo(_state);
        if (time > _recording.Time(step))
        {
            _integrator.Start(_recording.Time(step), _state);
            _integrator.Run(time);
            _integrator.State.CopyTo(_state);
        }

        _mechanism.Evaluate(_state);
    }

    private CordState CordAt(int cord, Turn turn, double time)
    {
        ReadOnlySpan<double> state = _state;
        int outer = _mechanism.OuterLink(cord);
        int inner = _mechanism.InnerLink(cord);
        ref readonly Link weight = ref _mechanism.Links[outer];
        Vec origin = Vec.Read(state);
        if (inner < 0)
        {
            bool gone = weight.Phase.Chart == Chart.Gone;
            (Vec place, Vec velocity) = Weighing.Track(weight, state);
            if (gone)
            {
                (place, velocity) = _flights[cord].After(time - _flights[cord].Start);
            }

            return new CordState
            {
                Phase = gone ? CordPhase.LetGo : CordPhase.Held,
                IsSlack = false,
                Tension = Force.Zero,
                FreeLength = gone ? _deployment.Cords[cord].Length : _deployment.Cords[cord].Hanging,
                CordAngle = Angle.Zero,
                OutOfPlane = Angle.Zero,
                Root = At(place),
                Joints = [],
                Weight = At(place),
                WeightVelocity = Vector<Speed, Inertial>.FromSi(velocity),
            };
        }

        ref readonly Link link = ref _mechanism.Links[inner];
        Vec root = Root(link, _cords[cord]);
        double free = (link.Motion.Position - root).Length;
        Position<Inertial>[] joints = inner == outer ? [] : new Position<Inertial>[inner - outer];
        for (int i = inner; i > outer; i--)
        {
            Vec joint = _mechanism.Links[i].Motion.Position;
            joints[inner - i] = At(origin + turn.ToInertial(joint));
            free += (_mechanism.Links[i - 1].Motion.Position - joint).Length;
        }

        (Vec weightPlace, Vec weightVelocity) = Weighing.Track(weight, state);
        return new CordState
        {
            Phase = link.IsOnDrum ? CordPhase.Unwinding : CordPhase.Hinging,
            IsSlack = !link.IsTaut,
            Tension = Force.FromNewtons(Math.Max(link.Motion.Tension, 0)),
            FreeLength = Length.FromMeters(free),
            CordAngle = Angle.FromRadians(
                link.IsOnDrum ? 0 : Math.Atan2(link.Motion.Along.Dot(link.Phase.Hinge.Radial), link.Motion.Along.Dot(link.Phase.Hinge.Trailing))),
            OutOfPlane = Angle.FromRadians(Math.Asin(Math.Clamp(link.Motion.Along.Dot(_hub.Axis), -1, 1))),
            Root = At(origin + turn.ToInertial(root)),
            Joints = joints,
            Weight = At(weightPlace),
            WeightVelocity = Vector<Speed, Inertial>.FromSi(weightVelocity),
        };
    }

    /// <summary>Where the free cord begins.</summary>
    private Vec Root(in Link link, CordConstants cord)
    {
        ref readonly LinkMotion motion = ref link.Motion;
        return link.Phase.Chart switch
        {
            Chart.Groove => motion.Position - (motion.Free * motion.Along),
            Chart.SmoothDrum => motion.Position - (motion.Free * (motion.Trailing + (motion.Sin / motion.Cos * _hub.Axis))),
            Chart.FreeDrum => (cord.Height * _hub.Axis) + (cord.Radius * motion.Radial),
            _ => link.Phase.Hinge.Place,
        };
    }

    private double TensionAt(int cord, double time)
    {
        GoTo(time);
        int inner = _mechanism.InnerLink(cord);
        return inner < 0 ? 0 : _mechanism.Links[inner].Motion.Tension;
    }

    private static Position<Inertial> At(Vec place) => Position<Inertial>.Origin + Vector<Length, Inertial>.FromSi(place);
}
