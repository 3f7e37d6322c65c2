namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What each event does to the phases, the state and the clock.</summary>
internal sealed class EventActions(Mechanism mechanism, double[] state, Clock clock, Happenings happenings)
{
    private readonly PhaseChanges _changes = new(mechanism);

    /// <summary>The moment it is.</summary>
    public double Time { get; set; }

    /// <summary>Acts on an event that ends a phase.</summary>
    public void ActOn(MechanismEvent happens)
    {
        int cord = happens.Subject;
        switch (happens.Kind)
        {
            case MechanismEventKind.TensionChanges:
                ChangeTension(happens.Subject);
                return;
            case MechanismEventKind.BearingStops or MechanismEventKind.BearingStarts:
                TurnBearing(happens.Kind == MechanismEventKind.BearingStops);
                return;
        }

        int inner = mechanism.InnerLink(cord);
        if (inner < 0)
        {
            return;
        }

        switch (happens.Kind)
        {
            case MechanismEventKind.WindingEnds:
                EndWinding(cord, inner);
                break;
            case MechanismEventKind.CordAngleReached:
                ReachAngle(cord);
                break;
            case MechanismEventKind.WrapsBack:
                WrapBack(cord, inner);
                break;
            case MechanismEventKind.NodeComesBack:
                ComeBack(cord, inner);
                break;
            case MechanismEventKind.RunsOffDrum:
                happenings.NoteLast(DeploymentEventKind.CordRunsOffDrum, Time, cord);
                break;
            case MechanismEventKind.RoomReached:
                happenings.NoteLast(DeploymentEventKind.WeightStrikesRoom, Time, cord);
                break;
            case MechanismEventKind.SpinSensed:
                SenseSpin(cord);
                break;
        }
    }

    /// <summary>Notes an event that changes nothing.</summary>
    public void See(MechanismEvent happens, double time)
    {
        int cord = happens.Subject;
        switch (happens.Kind)
        {
            case MechanismEventKind.DeckTouched:
                happenings.Note(DeploymentEventKind.CordTouchesDeckEdge, time, cord);
                break;
            case MechanismEventKind.UnwindingReverses when mechanism.InnerLink(cord) == mechanism.OuterLink(cord):
                happenings.Note(DeploymentEventKind.UnwindingReversed, time, cord);
                break;
        }
    }

    /// <summary>Releases the weights and lets go of the cords whose time has come.</summary>
    public void ActOnTheClock()
    {
        for (int cord = 0; cord < mechanism.CordCount; cord++)
        {
            if (clock.Releases(cord, Time))
            {
                _changes.Release(cord, state);
                happenings.Note(DeploymentEventKind.WeightReleased, Time, cord);
            }

            if (clock.LetsGo(cord, Time))
            {
                LetGo(cord);
            }
        }
    }

    /// <summary>
    /// Lumps that are barely off the drum and move towards it, as another cord's jolt makes them, are on it again: no event is
    /// located in what would be left of their way.
    /// </summary>
    /// <returns>Whether there was one.</returns>
    public bool LandWhatFalls()
    {
        bool any = false;
        for (int cord = 0; cord < mechanism.CordCount; cord++)
        {
            int inner = mechanism.InnerLink(cord);
            if (inner <= mechanism.OuterLink(cord))
            {
                continue;
            }

            ref readonly Link link = ref mechanism.Links[inner];
            double unwound = state[link.Offset];
            if (link.IsOnDrum && link.Phase.Winding is { IsBack: false, Length: 0 } && unwound > 0 && state[link.Offset + 3] < 0 &&
                unwound * mechanism.CordOf(cord).Radius < Surroundings.TouchDistance(mechanism.CordOf(cord)))
            {
                ComeBack(cord, inner);
                any = true;
            }
        }

        return any;
    }

    /// <summary>A winding ends, at its end or at the next lump.</summary>
    public void EndWinding(int cord, int inner)
    {
        double before = Energy();
        CordConstants constants = mechanism.CordOf(cord);
        bool hinged = _changes.EndWinding(inner, state);
        double lost = before - Energy();
        if (!hinged)
        {
            happenings.Note(DeploymentEventKind.CordPiecePeeled, Time, cord, lost);
            return;
        }

        bool jammed = !double.IsPositiveInfinity(constants.JamsAt);
        happenings.Note(jammed ? DeploymentEventKind.Jammed : DeploymentEventKind.Unwound, Time, cord, lost);
        if (!jammed && constants.LetGo.Kind == LetGoKind.CordAngle && constants.LetGo.Value <= 0)
        {
            ReachAngle(cord);
        }
    }

    /// <summary>A taut link goes slack, a slack one comes taut.</summary>
    public void ChangeTension(int index)
    {
        ref readonly Link link = ref mechanism.Links[index];
        if (!link.IsMoving)
        {
            return;
        }

        double before = Energy();
        if (link.IsTaut)
        {
            // An elastic cord with damping lets go of what little stretch it still has: the ledger names it.
            _changes.Slacken(index, state);
            happenings.Note(DeploymentEventKind.CordSlack, Time, link.Cord, before - Energy());
        }
        else
        {
            _changes.Tighten(index, state);
            happenings.Note(DeploymentEventKind.CordTaut, Time, link.Cord, before - Energy());
        }
    }

    /// <summary>The sensor sees the spin at which a cord lets go.</summary>
    public void SenseSpin(int cord)
    {
        clock.LetGoAt(cord, Time + mechanism.CordOf(cord).LetGo.Delay);
        happenings.Note(DeploymentEventKind.SpinRateSensed, Time, cord);
    }

    /// <summary>A cord stands where it lets go: it does, or does after the latency.</summary>
    public void ReachAngle(int cord)
    {
        if (mechanism.HasLetGo(cord) || !clock.Waits(cord))
        {
            return;
        }

        double latency = mechanism.CordOf(cord).LetGo.Delay;
        if (latency == 0)
        {
            LetGo(cord);
            return;
        }

        clock.LetGoAt(cord, Time + latency);
        happenings.Note(DeploymentEventKind.LetGoAngleReached, Time, cord);
    }

    private void LetGo(int cord)
    {
        if (mechanism.HasLetGo(cord))
        {
            return;
        }

        mechanism.Evaluate(state);
        (Vec position, Vec velocity) = Weighing.Track(mechanism.Links[mechanism.OuterLink(cord)], state);
        Balance carried = _changes.LetGo(cord, state);
        clock.Stop(cord);
        happenings.NoteLetGo(cord, new Departure(position, velocity, Time), carried);
    }

    private void WrapBack(int cord, int inner)
    {
        double before = Energy();
        _changes.WrapAgain(inner, state);
        happenings.Note(DeploymentEventKind.CordWrapsBack, Time, cord, before - Energy());
    }

    private void ComeBack(int cord, int inner)
    {
        if (inner == mechanism.OuterLink(cord))
        {
            happenings.NoteLast(DeploymentEventKind.WeightStrikesHub, Time, cord);
        }
        else if (mechanism.Links[inner].Phase.Winding.IsBack)
        {
            happenings.NoteLast(DeploymentEventKind.CordPieceWindsUp, Time, cord);
        }
        else
        {
            double before = Energy();
            _changes.Land(inner, state);
            happenings.Note(DeploymentEventKind.CordPieceLands, Time, cord, before - Energy());
        }
    }

    private void TurnBearing(bool stops)
    {
        mechanism.Evaluate(state);
        double load = mechanism.AxialLoad;
        if (stops && Math.Abs(load) <= mechanism.Hub.CoulombFriction)
        {
            default(Vec).Write(state.AsSpan(Mechanism.Rates));
            mechanism.SetBearing(0);
            happenings.Note(DeploymentEventKind.BearingStopped, Time, -1);
        }
        else
        {
            mechanism.SetBearing(Math.Sign(load));
            happenings.Note(DeploymentEventKind.BearingTurns, Time, -1);
        }
    }

    private double Energy()
    {
        mechanism.Evaluate(state);
        return Weighing.Of(mechanism, state).Energy;
    }
}
