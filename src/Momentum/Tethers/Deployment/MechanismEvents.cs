using Momentum.Numerics;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// The functions whose zeros end a phase. A function that has no meaning in the present phase stays at one.
/// </summary>
/// <remarks>
/// One slot a link for slackening and tightening, then <see cref="PerCord"/> slots a cord, then the bearing's two.
/// </remarks>
/// <param name="mechanism">Hub and cords.</param>
/// <param name="surroundings">Deck, room and sense of spin.</param>
/// <param name="releaseAt">When each cord lets go; infinite as long as that is not known, and then only what makes it let go is watched.</param>
internal readonly struct MechanismEvents(Mechanism mechanism, Surroundings surroundings, double[] releaseAt) : IEventFunctions
{
    public const int End = 0;
    public const int LetGoAngle = 1;
    public const int WrapBack = 2;
    public const int Reverse = 3;
    public const int Strike = 4;
    public const int Deck = 5;
    public const int Spin = 6;
    public const int Room = 7;
    public const int OffDrum = 8;
    public const int PerCord = 9;
    public const int BearingStops = 0;
    public const int BearingStarts = 1;

    private const double Idle = 1;
    private const double Lateness = 1e-13;

    // Cosine of 75 degrees.
    private const double SteepestOnDrum = 0.25881904510252074;

    public int Count => mechanism.Links.Length + (PerCord * mechanism.CordCount) + 2;

    public EventRule Rule(int index)
    {
        int links = mechanism.Links.Length;
        if (index < links)
        {
            ref readonly Link link = ref mechanism.Links[index];
            bool slack = link.IsMoving && !link.IsTaut;

            // A slack cord starts short of its length.
            return new EventRule(slack ? EventDirection.Rising : EventDirection.Falling, true, slack);
        }

        index -= links;
        if (index >= PerCord * mechanism.CordCount)
        {
            return new EventRule(index - (PerCord * mechanism.CordCount) == BearingStops ? EventDirection.Falling : EventDirection.Rising, true);
        }

        return (index % PerCord) switch
        {
            End => new EventRule(EventDirection.Rising, true, IsOnDrum(index / PerCord)),
            LetGoAngle => new EventRule(EventDirection.Rising, true),
            WrapBack => new EventRule(EventDirection.Falling, true, true),
            Deck or Reverse => new EventRule(EventDirection.Falling, false),
            _ => new EventRule(EventDirection.Falling, true),
        };
    }

    public void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        mechanism.Evaluate(state);
        ReadOnlySpan<Link> links = mechanism.Links;
        for (int i = 0; i < links.Length; i++)
        {
            values[i] = Tightness(links[i]);
        }

        values = values[links.Length..];
        for (int cord = 0; cord < mechanism.CordCount; cord++)
        {
            Span<double> own = values.Slice(PerCord * cord, PerCord);
            own.Fill(Idle);
            int inner = mechanism.InnerLink(cord);
            if (inner < 0)
            {
                continue;
            }

            CordConstants constants = mechanism.CordOf(cord);
            ref readonly Link link = ref links[inner];
            if (link.IsOnDrum)
            {
                ReadOnlySpan<double> c = state.Slice(link.Offset, Mechanism.Slots);
                own[End] = c[0] - link.EndAngle;
                own[Reverse] = c[3];
                own[OffDrum] = link.Cos - SteepestOnDrum;
                // A lump that has just left the drum may come near it again as the cord's mass swings.
                bool comesBack = inner == mechanism.OuterLink(cord) || link.WrappedBack;
                own[Strike] = link.Free - (comesBack ? Surroundings.StrikeDistance(constants) : Surroundings.TouchDistance(constants));
                if (constants.LetGo == LetGoKind.CordAngle && constants.LetGoValue < 0 && Waits(cord) && !link.WrappedBack)
                {
                    double run = (link.Sense * (link.BaseAngle - constants.StartAngle)) + c[0];
                    own[LetGoAngle] = run - constants.WoundAngle - constants.LetGoValue;
                }
            }
            else
            {
                double outward = link.Along.Dot(link.AnchorRadial);
                own[WrapBack] = outward;
                if (constants.LetGo == LetGoKind.CordAngle && Waits(cord))
                {
                    (double sin, double cos) = Math.SinCos(constants.LetGoValue);
                    own[LetGoAngle] = (outward * cos) - (link.Along.Dot(link.AnchorTrailing) * sin);
                }
            }

            own[Deck] = surroundings.DeckClearance(mechanism, link);
            if (constants.LetGo == LetGoKind.SpinRate && Waits(cord))
            {
                own[Spin] = (surroundings.SpinSign * mechanism.AxialRate) - constants.LetGoValue;
            }

            if (surroundings.HasRoom)
            {
                own[Room] = surroundings.RoomClearance(mechanism.Track(mechanism.OuterLink(cord), state).Position);
            }
        }

        values = values[(PerCord * mechanism.CordCount)..];
        double coulomb = mechanism.Hub.OnBearing ? mechanism.Hub.CoulombFriction : 0;
        bool held = mechanism.BearingSign == 0;
        values[BearingStops] = coulomb > 0 && !held ? mechanism.BearingSign * mechanism.AxialRate : Idle;
        values[BearingStarts] = coulomb > 0 && held ? Math.Abs(mechanism.AxialLoad) - coulomb : Idle;
    }

    private bool IsOnDrum(int cord)
    {
        int inner = mechanism.InnerLink(cord);
        return inner >= 0 && mechanism.Links[inner].IsOnDrum;
    }

    /// <summary>Whether what makes a cord let go is still to come; afterwards its release is on the clock.</summary>
    private bool Waits(int cord) => double.IsPositiveInfinity(releaseAt[cord]);

    /// <summary>
    /// Positive while a link is taut. A slack one comes taut a tenth of a trillionth of its length late, so that rounding
    /// never has it taut at the moment it went slack.
    /// </summary>
    private static double Tightness(in Link link) => link.Chart switch
    {
        LinkChart.Wound or LinkChart.Hinged => link.Tension,
        LinkChart.WoundFree or LinkChart.HingedFree when link.Pulls => Math.Min(
            link.Spring * link.Stretch,
            (link.Spring * link.Stretch) + (link.Damper * link.StretchRate)),
        LinkChart.WoundFree or LinkChart.HingedFree => Math.Min(
            link.Stretch - (Lateness * link.Natural),
            link.Spring > 0 ? link.Stretch + (link.Damper / link.Spring * link.StretchRate) : double.PositiveInfinity),
        _ => Idle,
    };
}
