using System.Globalization;
using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>The tables of the motion in three dimensions.</summary>
internal static class WholeMotionWords
{
    private const double RpmPerRadian = 30 / Math.PI;

    // Below this share of the momentum at the start, rounding and not physics says where the rest points.
    private const double PointsNowhere = 1e-9;

    // Two events closer than this, as a share of the whole, are one to a reader.
    private const double AtOnce = 1e-7;

    private const int MostEvents = 24;

    /// <summary>The section.</summary>
    /// <param name="result">The motion.</param>
    /// <param name="residual">Its final spin split by cause; null if it could not be.</param>
    /// <param name="planar">The planar motion of the same design.</param>
    public static WholeMotionSection Of(DeploymentResult result, Tethers.Deployment.ResidualSpin? residual, PlanarMotion planar)
    {
        return new WholeMotionSection
        {
            Summary = Summary(result, planar),
            Wobble = result.Deployment.Rig is null ? [.. Wobbles(result)] : [],
            FinalSpin = residual is null ? [] : [.. FinalSpin(residual, Math.Abs(planar.Design.Hub.Spin.RevolutionsPerMinute))],
            SpinUnit = "rpm",
            Peaks = [.. result.PeakTensions.Select(p => new PeakRow(
                p.Cord + 1, new Figure(p.Tension.Newtons, "N"), new Figure(p.Time.Seconds, "s", 3)))],
            Departures = [.. Enumerable.Range(0, result.Deployment.Cords.Count).Select(c => LetGo(c, result))],
            SpeedsAreOf = SpeedsAreOf(result.Deployment),
            Landings = [.. result.Landings.Select(Land)],
            Events = Events(result),
            Ledger = Ledger(result),
        };
    }

    private static string Summary(DeploymentResult result, PlanarMotion planar)
    {
        double initial = Math.Abs(planar.Design.Hub.Spin.RevolutionsPerMinute);
        var spin = new Figure(result.FinalSpin.RevolutionsPerMinute, "rpm", 3, 1e-9 * initial);
        var flat = new Figure(planar.FinalSpin.RevolutionsPerMinute, "rpm", 3, 1e-9 * initial);
        if (result.Deployment.Rig is not null)
        {
            return $"On the rig's bearing, with gravity, friction and the cords as stated, the spin rate ends at {spin}; the planar motion gives {flat}.";
        }

        return $"With the full inertia tensor, the wobble and the cords as stated, the spin rate ends at {spin}; the planar motion gives {flat}. "
            + $"{(AllLetGo(result) ? "After the last let-go" : "At the end")} the rate across the spin axis reaches {Rate(result.After.LargestTransverseRate)} "
            + $"and the nutation angle {Degrees(result.After.LargestNutation)}.";
    }

    private static bool AllLetGo(DeploymentResult result) =>
        result.Events.Count(e => e.Kind == DeploymentEventKind.LetGo) == result.Deployment.Cords.Count;

    private static IEnumerable<WobbleRow> Wobbles(DeploymentResult result)
    {
        var stage = new StageTurn(result.Deployment);
        double start = result.At(Duration.Zero).HubAngularMomentum.Magnitude.KilogramSquareMetersPerSecond;
        yield return Row("Before the first weight is free", result.Before);
        yield return Row(AllLetGo(result) ? "From then to the last let-go" : "From then to the end", result.During);
        yield return Row(!AllLetGo(result) ? "At the end, a cord still on" : "After the last let-go, for all time", result.After);

        WobbleRow Row(string stretch, Wobble wobble)
        {
            double size = wobble.Momentum.Magnitude.KilogramSquareMetersPerSecond;
            bool points = size > PointsNowhere * start;
            return new WobbleRow(
                stretch,
                Degrees(wobble.LargestNutation),
                Rate(wobble.LargestTransverseRate),
                new Figure(size, "kg·m²/s", zeroBelow: PointsNowhere * start),
                points ? Components(stage.Inertial.Apply(wobble.Momentum.Direction())) : "nowhere: none is left",
                points ? Degrees(wobble.MomentumTilt) : null);
        }
    }

    private static string Components(Direction<StageAxes> direction) =>
        string.Join(", ", new[] { direction.X, direction.Y, direction.Z }
            .Select(c => Math.Round(c, 4).ToString("0.0000", CultureInfo.InvariantCulture).Replace("-0.0000", "0.0000", StringComparison.Ordinal).Replace('-', '\u2212')));

    private static IEnumerable<SpinPart> FinalSpin(Tethers.Deployment.ResidualSpin residual, double initial)
    {
        yield return new SpinPart("The design without any of these", Rpm(residual.Ideal));
        foreach (SpinShare share in residual.Shares)
        {
            yield return new SpinPart(Capital(WholeMotionFigures.Words(share.Cause)), Rpm(share.Share));
        }

        if (residual.Shares.Count > 1)
        {
            yield return new SpinPart("What they do only together", Rpm(residual.Together));
        }

        yield return new SpinPart("Final spin rate", Rpm(residual.Final), IsWhole: true);

        double Rpm(RotationalSpeed spin) => Solver.Rounded(spin.RevolutionsPerMinute, initial);

        static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>What the speeds of weights are relative to.</summary>
    public static string SpeedsAreOf(CordDeployment deployment) => deployment.Rig is null
        ? "Speeds are inertial, from the vehicle at rest before release; its own travel is to be added."
        : "Speeds are relative to the room.";

    private static LetGoRow LetGo(int cord, DeploymentResult result)
    {
        WeightDeparture? left = result.Departures.Where(l => l.Cord == cord).Select(l => (WeightDeparture?)l).FirstOrDefault();
        return left is not { } letGo
            ? new LetGoRow(cord + 1, null, null, null)
            : new LetGoRow(
                cord + 1,
                new Figure(letGo.Time.Seconds, "s", 3),
                new Figure(letGo.Velocity.Magnitude.MetersPerSecond, "m/s"),
                new Figure(letGo.Energy.Joules, "J"));
    }

    /// <summary>The room's axes are the inertial ones, their third axis upward from the body origin.</summary>
    private static LandingRow Land(Landing landing)
    {
        double aside = Math.Sqrt(Math.Pow(landing.Place.X.Meters, 2) + Math.Pow(landing.Place.Y.Meters, 2));
        double height = landing.Place.Z.Meters;
        string place = landing.OnFloor
            ? $"floor, {new Figure(aside, "m", 3)} from the axis"
            : $"wall, {new Figure(Math.Abs(height), "m", 3)} {(height < 0 ? "below" : "above")} the body origin";
        return new LandingRow(
            landing.Cord + 1,
            place,
            new Figure(landing.Time.Seconds, "s", 3),
            new Figure(landing.Speed.MetersPerSecond, "m/s", 3),
            new Figure(landing.Energy.Joules, "J", 3));
    }

    private static List<EventRow> Events(DeploymentResult result)
    {
        double atOnce = AtOnce * result.End.Seconds;
        DeploymentEvent[] told = [.. result.Events.Where(e => Words(e.Kind) is not null)];
        List<EventRow> rows = [];
        for (int i = 0; i < told.Length;)
        {
            DeploymentEvent[] together = [.. told.Skip(i).TakeWhile(e => e.Time.Seconds - told[i].Time.Seconds <= atOnce)];
            rows.AddRange(together.GroupBy(e => e.Kind).Select(g => Row([.. g], result.Ledger.EnergyAtStart.Total.Joules)));
            i += together.Length;
        }

        int left = rows.Count - MostEvents;
        return left <= 0 ? rows :
        [
            .. rows.Take(MostEvents),
            new EventRow(rows[MostEvents].Time, string.Create(CultureInfo.InvariantCulture, $"and {left} more from here on, most of them cords that go slack and taut")),
        ];
    }

    private static EventRow Row(DeploymentEvent[] together, double start)
    {
        double lost = together.Sum(e => e.EnergyLost.Joules);
        string impulse = lost > 1e-9 * start ? $"; the impulse takes {new Figure(lost, "J", 3)}" : "";
        return new EventRow(together[0].Time.Seconds, $"{Subject(together)}{Words(together[0].Kind)}{impulse}");
    }

    private static string Subject(DeploymentEvent[] together)
    {
        string[] cords = [.. together.Where(e => e.Cord is not null).Select(e => e.Cord!.Value + 1).Order().Select(c => c.ToString(CultureInfo.InvariantCulture))];
        return cords.Length switch
        {
            0 => "",
            1 => $"Cord {cords[0]}: ",
            _ => $"Cords {string.Join(", ", cords[..^1])} and {cords[^1]}: ",
        };
    }

    /// <summary>What happened, without whom; null for what is no news to a reader.</summary>
    private static string? Words(DeploymentEventKind kind) => kind switch
    {
        DeploymentEventKind.WeightReleased => "weight released",
        DeploymentEventKind.Unwound => "fully unwound, now hinging about the end on the hub",
        DeploymentEventKind.Jammed => "jammed on the drum",
        DeploymentEventKind.CordSlack => "slack",
        DeploymentEventKind.CordTaut => "taut again",
        DeploymentEventKind.SpinRateSensed => "let-go rate sensed",
        DeploymentEventKind.LetGoAngleReached => "let-go angle reached",
        DeploymentEventKind.LetGo => "let go of the hub",
        DeploymentEventKind.CordWrapsBack => "back on the hub, winding up on it again",
        DeploymentEventKind.UnwindingReversed => "no longer unwinding, winding up again",
        DeploymentEventKind.CordRunsOffDrum => "so far out of its plane that it would run off the drum; the computation ends",
        DeploymentEventKind.CordPieceWindsUp => "winding up on the hub; the computation ends",
        DeploymentEventKind.WeightStrikesHub => "weight against the hub; the computation ends",
        DeploymentEventKind.CordTouchesDeckEdge => "against the deck's edge",
        DeploymentEventKind.WeightStrikesRoom => "weight against the floor or a wall; the computation ends",
        DeploymentEventKind.BearingStopped => "The bearing's friction stops the hub",
        DeploymentEventKind.BearingTurns => "The hub turns on its bearing again",
        DeploymentEventKind.End => "End of the computation",
        _ => null,
    };

    private static List<LedgerGroup> Ledger(DeploymentResult result)
    {
        DeploymentLedger ledger = result.Ledger;
        var stage = new StageTurn(result.Deployment);
        bool onRig = result.Deployment.Rig is not null;
        List<LedgerGroup> groups = [];
        if (!onRig)
        {
            // What the weights have together if they carry off all the energy is the natural size of a linear momentum here.
            double carried = Math.Sqrt(2 * result.Deployment.Cords.Sum(c => c.WeightMass.Kilograms) * ledger.EnergyAtStart.Total.Joules);
            groups.Add(new LedgerGroup(
                "Linear momentum",
                "N·s",
                Components(
                    stage.Inertial.Apply(ledger.LinearMomentumAtStart),
                    stage.Inertial.Apply(ledger.LinearMomentumCarriedAway),
                    stage.Inertial.Apply(ledger.LinearMomentumAtEnd),
                    v => (v.X.NewtonSeconds, v.Y.NewtonSeconds, v.Z.NewtonSeconds),
                    carried),
                $"closes to {Closure(ledger.LinearMomentumClosure)} of what the weights have if they carry off all the energy"));
        }

        LedgerRow[] angular = Components(
            stage.Inertial.Apply(ledger.AngularMomentumAtStart),
            stage.Inertial.Apply(ledger.AngularMomentumCarriedAway),
            stage.Inertial.Apply(ledger.AngularMomentumAtEnd),
            v => (v.X.KilogramSquareMetersPerSecond, v.Y.KilogramSquareMetersPerSecond, v.Z.KilogramSquareMetersPerSecond),
            ledger.AngularMomentumAtStart.Magnitude.KilogramSquareMetersPerSecond);

        // The bearing holds the hub across its axis with a torque that nobody measures.
        groups.Add(new LedgerGroup(
            onRig ? "Angular momentum about the bearing's axis" : "Angular momentum about the inertial origin",
            "kg·m²/s",
            onRig ? angular[^1..] : angular,
            $"closes to {Closure(ledger.AngularMomentumClosure)} of its size at the start{(onRig ? "; the rest went into bearing friction and gravity, which is counted" : "")}"));
        groups.Add(Energies(ledger, onRig));
        return groups;
    }

    private static LedgerRow[] Components<TQuantity>(
        Vector<TQuantity, StageAxes> start, Vector<TQuantity, StageAxes> carried, Vector<TQuantity, StageAxes> end,
        Func<Vector<TQuantity, StageAxes>, (double X, double Y, double Z)> read, double scale)
        where TQuantity : struct
    {
        (double X, double Y, double Z) from = read(start);
        (double X, double Y, double Z) away = read(carried);
        (double X, double Y, double Z) left = read(end);
        return
        [
            Row("first axis", from.X, away.X, left.X),
            Row("second axis", from.Y, away.Y, left.Y),
            Row("third axis", from.Z, away.Z, left.Z),
        ];

        LedgerRow Row(string name, double atStart, double gone, double atEnd) => new(
            name, Entry(atStart), Entry(gone), Entry(atEnd));

        Figure Entry(double value) => new(value, "", 4, 1e-11 * scale);
    }

    private static LedgerGroup Energies(DeploymentLedger ledger, bool onRig)
    {
        (DeploymentEnergy start, DeploymentEnergy end) = (ledger.EnergyAtStart, ledger.EnergyAtEnd);
        double scale = start.Total.Joules - start.Gravity.Joules;
        List<LedgerRow> rows =
        [
            Held("turning of the hub", e => e.HubRotation),
            Held("travel of the hub", e => e.HubTranslation),
            Held("motion of the weights", e => e.Weights),
            Held("motion of the cords", e => e.Cords),
            Held("stretch of the cords", e => e.Elastic),
        ];
        if (onRig)
        {
            rows.Add(Held("height", e => e.Gravity));
        }

        double gone = 0;
        Taken("carried away", ledger.EnergyCarriedAway.Joules);
        Taken("drum friction", -ledger.DrumFrictionWork.Joules);
        Taken("damping in the cords", -ledger.CordDampingWork.Joules);
        if (onRig)
        {
            Taken("bearing friction", -ledger.BearingWork.Joules);
        }

        Taken("impulses at full length", ledger.ImpulseLoss.Joules);
        rows.Add(new("all", Entry(start.Total.Joules), Entry(gone), Entry(end.Total.Joules), IsSum: true));
        return new LedgerGroup("Energy", "J", rows, $"closes to {Closure(ledger.EnergyClosure)} of the kinetic energy at the start");

        LedgerRow Held(string name, Func<DeploymentEnergy, Energy> part) => new(name, Entry(part(start).Joules), End: Entry(part(end).Joules));

        void Taken(string name, double energy)
        {
            gone += energy;
            rows.Add(new(name, Gone: Entry(energy)));
        }

        Figure Entry(double value) => new(value, "", 4, 1e-11 * scale);
    }

    private static string Closure(double departure) => new Figure(departure, "", 2).Number;

    private static Figure Degrees(Angle angle) => new(angle.Degrees, "°", 3, 1e-9);

    private static Figure Rate(RotationalSpeed rate) => new(rate.RadiansPerSecond * RpmPerRadian, "rpm", 3, 1e-9);
}
