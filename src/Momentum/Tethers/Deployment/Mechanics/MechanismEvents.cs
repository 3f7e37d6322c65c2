using Momentum.Numerics;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The functions whose zeros are the events of a mechanism. A function that has no meaning in the present phase stays at one.
/// </summary>
/// <remarks>
/// The integrator counts functions; which event each one stands for is told by the indexer, and nowhere else. First the links, then each
/// cord, then the bearing.
/// </remarks>
/// <param name="mechanism">Hub and cords.</param>
/// <param name="surroundings">Deck, room and sense of spin.</param>
/// <param name="clock">Tells which cords still wait for what makes them let go; only then that is watched.</param>
internal readonly struct MechanismEvents(Mechanism mechanism, Surroundings surroundings, Clock clock) : IEventFunctions
{
    private const MechanismEventKind FirstOfCord = MechanismEventKind.WindingEnds;
    private const MechanismEventKind FirstOfBearing = MechanismEventKind.BearingStops;
    private const int PerCord = FirstOfBearing - FirstOfCord;
    private const int OfBearing = 2;

    private const double Idle = 1;
    private const double Lateness = 1e-13;

    // Cosine of 75 degrees.
    private const double SteepestOnDrum = 0.25881904510252074;

    public int Count => FirstBearing + OfBearing;

    private int FirstBearing => mechanism.Links.Length + (PerCord * mechanism.CordCount);

    /// <summary>The event that a function stands for.</summary>
    public MechanismEvent this[int function]
    {
        get
        {
            int links = mechanism.Links.Length;
            if (function < links)
            {
                return new MechanismEvent(MechanismEventKind.TensionChanges, function);
            }

            if (function >= FirstBearing)
            {
                return new MechanismEvent(FirstOfBearing + (function - FirstBearing), -1);
            }

            (int cord, int kind) = int.DivRem(function - links, PerCord);
            return new MechanismEvent(FirstOfCord + kind, cord);
        }
    }

    public EventRule Rule(int index)
    {
        MechanismEvent happens = this[index];
        switch (happens.Kind)
        {
            case MechanismEventKind.TensionChanges:
                ref readonly Link link = ref mechanism.Links[happens.Subject];
                bool slack = link.IsMoving && !link.IsTaut;

                // A slack cord starts short of its length.
                return new EventRule(slack ? EventDirection.Rising : EventDirection.Falling, true, slack);
            case MechanismEventKind.WindingEnds:
                return new EventRule(EventDirection.Rising, true, IsOnDrum(happens.Subject));
            case MechanismEventKind.WrapsBack:
                return new EventRule(EventDirection.Falling, true, true);
            case MechanismEventKind.CordAngleReached or MechanismEventKind.BearingStarts:
                return new EventRule(EventDirection.Rising, true);
            case MechanismEventKind.DeckTouched or MechanismEventKind.UnwindingReverses:
                return new EventRule(EventDirection.Falling, false);
            default:
                return new EventRule(EventDirection.Falling, true);
        }
    }

    public void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        mechanism.Evaluate(state);
        ReadOnlySpan<Link> links = mechanism.Links;
        for (int i = 0; i < links.Length; i++)
        {
            values[i] = Tightness(links[i]);
        }

        for (int cord = 0; cord < mechanism.CordCount; cord++)
        {
            EvaluateCord(cord, state, new CordValues(values.Slice(links.Length + (PerCord * cord), PerCord)));
        }

        double coulomb = mechanism.Hub.OnBearing ? mechanism.Hub.CoulombFriction : 0;
        bool held = mechanism.BearingSign == 0;
        values[FirstBearing] = coulomb > 0 && !held ? mechanism.BearingSign * mechanism.AxialRate : Idle;
        values[FirstBearing + 1] = coulomb > 0 && held ? Math.Abs(mechanism.AxialLoad) - coulomb : Idle;
    }

    /// <summary>The functions of one cord among all.</summary>
    public CordValues Of(int cord, Span<double> values) => new(values.Slice(mechanism.Links.Length + (PerCord * cord), PerCord));

    private void EvaluateCord(int cord, ReadOnlySpan<double> state, CordValues own)
    {
        own.Clear();
        int inner = mechanism.InnerLink(cord);
        if (inner < 0)
        {
            return;
        }

        CordConstants constants = mechanism.CordOf(cord);
        ref readonly Link link = ref mechanism.Links[inner];
        if (link.IsOnDrum)
        {
            EvaluateOnDrum(link, inner == mechanism.OuterLink(cord), state, own);
        }
        else
        {
            double outward = link.Motion.Along.Dot(link.Phase.Hinge.Radial);
            own[MechanismEventKind.WrapsBack] = outward;
            if (constants.LetGo.Kind == LetGoKind.CordAngle && clock.Waits(cord))
            {
                (double sin, double cos) = Math.SinCos(constants.LetGo.Value);
                own[MechanismEventKind.CordAngleReached] = (outward * cos) - (link.Motion.Along.Dot(link.Phase.Hinge.Trailing) * sin);
            }
        }

        own[MechanismEventKind.DeckTouched] = surroundings.DeckClearance(mechanism, link);
        if (constants.LetGo.Kind == LetGoKind.SpinRate && clock.Waits(cord))
        {
            own[MechanismEventKind.SpinSensed] = (surroundings.SpinSign * mechanism.AxialRate) - constants.LetGo.Value;
        }

        if (surroundings.HasRoom)
        {
            own[MechanismEventKind.RoomReached] =
                surroundings.RoomClearance(Weighing.Track(mechanism.Links[mechanism.OuterLink(cord)], state).Position);
        }
    }

    private void EvaluateOnDrum(in Link link, bool isWeight, ReadOnlySpan<double> state, CordValues own)
    {
        CordConstants constants = mechanism.CordOf(link.Cord);
        ref readonly DrumWinding winding = ref link.Phase.Winding;
        double unwound = state[link.Offset];
        own[MechanismEventKind.WindingEnds] = unwound - winding.End;
        own[MechanismEventKind.UnwindingReverses] = state[link.Offset + 3];
        own[MechanismEventKind.RunsOffDrum] = link.Motion.Cos - SteepestOnDrum;

        own[MechanismEventKind.NodeComesBack] = isWeight || winding.IsBack
            ? link.Motion.Free - Surroundings.StrikeDistance(constants)
            : ClearOfDrum(link, constants, state[link.Offset + 3]);
        if (constants.LetGo.Kind == LetGoKind.CordAngle && constants.LetGo.Value < 0 && clock.Waits(link.Cord) && !winding.IsBack)
        {
            double run = (winding.Sense * (winding.Angle - constants.StartAngle)) + unwound;
            own[MechanismEventKind.CordAngleReached] = run - constants.WoundAngle - constants.LetGo.Value;
        }
    }

    /// <summary>
    /// Positive while a lump of a heavy cord is off the drum. One that has just left it is within touch of it still, and one that
    /// swings on the cord comes near it: these are on it again only when they come back onto it.
    /// </summary>
    private static double ClearOfDrum(in Link link, CordConstants cord, double outward)
    {
        double touch = Surroundings.TouchDistance(cord);
        double clear = link.Motion.Free - touch;
        return clear > 0 ? clear : Math.Max(clear, outward / cord.FrictionSpeed * touch);
    }

    private bool IsOnDrum(int cord)
    {
        int inner = mechanism.InnerLink(cord);
        return inner >= 0 && mechanism.Links[inner].IsOnDrum;
    }

    /// <summary>
    /// Positive while a link is taut. A slack one comes taut a tenth of a trillionth of its length late, so that rounding
    /// never has it taut at the moment it went slack.
    /// </summary>
    private static double Tightness(in Link link)
    {
        ref readonly LinkMotion motion = ref link.Motion;
        if (!link.IsMoving)
        {
            return Idle;
        }

        if (link.IsConstrained)
        {
            return motion.Tension;
        }

        if (link.Phase.Pulls)
        {
            double spring = link.Spring * motion.Stretch;
            return Math.Min(spring, spring + (link.Damper * motion.StretchRate));
        }

        return Math.Min(
            motion.Stretch - (Lateness * link.Phase.Natural),
            link.Spring > 0 ? motion.Stretch + (link.Damper / link.Spring * motion.StretchRate) : double.PositiveInfinity);
    }

    /// <summary>The values of the functions of one cord.</summary>
    internal readonly ref struct CordValues(Span<double> values)
    {
        private readonly Span<double> _values = values;

        public ref double this[MechanismEventKind kind] => ref _values[kind - FirstOfCord];

        public void Clear() => _values.Fill(Idle);
    }
}
