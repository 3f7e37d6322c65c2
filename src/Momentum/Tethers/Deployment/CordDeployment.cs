using System.Globalization;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Numerics;
using Momentum.Quantities;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// A spinning hub with cords wound on it, in three dimensions: what is needed to compute the whole deployment. Immutable;
/// equality is by value (cords by reference to their list).
/// </summary>
/// <remarks>
/// <para>The hub is a rigid body with its full inertia tensor, free to turn and to move unless it is on a rig. Cords are
/// straight where they are free and have no bending stiffness; a cord with mass is straight between its joints. The spin
/// axis through the body origin is every drum's axis. The computation starts with all weights held, and the whole with its
/// centre of mass at rest at the inertial origin (on a rig: with the body origin there).</para>
/// <para>Weights fly at tens of metres a second and cords carry hundreds of newtons. The figures support a design review;
/// they replace neither a range's safety rules nor the work of licensed people on ordnance and rigs.</para>
/// </remarks>
public sealed record CordDeployment
{
    private const int MostCords = 16;

    // An edge nearer to a drum's plane than this, in metres, has no side that the cord could come from.
    private const double SamePlane = 1e-6;

    /// <summary>The hub without weights and cords; inertia about its own centre of mass, positions from the body origin.</summary>
    public required MassProperties<Body> Hub { get; init; }

    /// <summary>One to 16 cords.</summary>
    public required IReadOnlyList<Cord> Cords { get; init; }

    /// <summary>Rates of the hub at the start, wobble and all; the part along the spin axis must not vanish.</summary>
    public required Vector<RotationalSpeed, Body> Rates { get; init; }

    /// <summary>The drums' axis, through the body origin.</summary>
    public Direction<Body> SpinAxis { get; init; } = Direction<Body>.ZAxis;

    /// <summary>Attitude at the start.</summary>
    public Rotation<Body, Inertial> Attitude { get; init; }

    /// <summary>A deck's edge to watch; null if there is none.</summary>
    public DeckEdge? Deck { get; init; }

    /// <summary>The rig; null for a hub that floats free.</summary>
    public BenchRig? Rig { get; init; }

    /// <summary>
    /// Whether <see cref="Deploy"/> halves the pieces of the heavy cords, down to one straight piece, where with more of them the
    /// motion is refused: a heavy cord that swings far out of its plane may let no fine chain through.
    /// </summary>
    public bool CoarserIfRefused { get; init; }

    /// <summary>When the computation ends; it ends earlier only if a weight strikes the hub or the room.</summary>
    public required Duration Until { get; init; }

    /// <summary>Largest nutation angle that is acceptable after the last let-go; null for no requirement.</summary>
    public Angle? LargestNutation { get; init; }

    /// <summary>Relative tolerance of a step, 1e-13 to 1e-6; the ledger must close to ten times this, or 1e-11.</summary>
    public double Tolerance { get; init; } = 1e-12;

    /// <summary>
    /// The same deployment, started with a stated wobble. The rate about the spin axis stays; those across it become the ones
    /// with which the angular momentum stands at the nutation angle to the axis, on the given side of it.
    /// </summary>
    /// <param name="nutation">
    /// Angle at the start between the spin axis, its nearer end, and the angular momentum of the hub with held weights and
    /// wound cords about their common centre of mass, which is what <see cref="DeploymentState.NutationAngle"/> tells; 0° and
    /// up, below 90°. With products of inertia a nutation of 0° has rates across the axis too.
    /// </param>
    /// <param name="direction">
    /// Where the part of that momentum across the axis points, counted like <see cref="Cord.StartAngle"/>; along the first of
    /// <see cref="HubAxes"/> if left out.
    /// </param>
    /// <exception cref="ArgumentException">
    /// A value of the deployment or of the wobble is not allowed, such as a wobble on a rig's bearing; the message names it.
    /// </exception>
    public CordDeployment Wobbling(Angle nutation, Angle direction = default)
    {
        Allowed.Require(Rig is null, nameof(Rig), Rig, "null: a hub on a bearing does not wobble");
        Allowed.Require(nutation.Radians is >= 0 and < Math.PI / 2, nameof(nutation), nutation, "0 or more, and below 90 degrees");
        Allowed.Require(double.IsFinite(direction.Radians), nameof(direction), direction, "a finite angle");
        HubConstants hub = CheckedHub();
        double spin = Rates.Si.Dot(hub.Axis);
        Mechanism mechanism = new(hub, CheckedCords(spin));
        Allowed.Require(
            mechanism.Riding.Wobble(spin, nutation.Radians, direction.Radians, out Vec rates),
            nameof(nutation),
            nutation,
            "smaller: with this hub's products of inertia an angular momentum so far from the axis turns the hub backward about it");
        return this with { Rates = Vector<RotationalSpeed, Body>.FromSi(rates) };
    }

    /// <summary>Computes the deployment.</summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentException">A value is not allowed; the message names it and says what is.</exception>
    /// <exception cref="ComputationRefusedException">
    /// The result cannot be trusted or does not exist: a weight is not thrown outward, cords chatter, the integration failed,
    /// or the ledger does not close.
    /// </exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public DeploymentResult Deploy(CancellationToken cancellation = default)
    {
        CordDeployment tried = this with { CoarserIfRefused = false };
        while (true)
        {
            try
            {
                return new(tried, cancellation);
            }
            catch (ComputationRefusedException) when (CoarserIfRefused && tried.Cords.Any(c => c.Pieces > 1))
            {
                tried = tried.EachCord(c => c with { Segments = Math.Max(1, c.Pieces / 2) });
            }
        }
    }

    /// <summary>The same deployment with every cord changed alike.</summary>
    /// <param name="change">What becomes of a cord.</param>
    public CordDeployment EachCord(Func<Cord, Cord> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return this with { Cords = [.. Cords.Select(change)] };
    }

    /// <summary>How the axes that the cords' angles are counted in stand to the body's.</summary>
    /// <remarks>
    /// The first is the body axis that follows the one nearest to <see cref="SpinAxis"/> in cyclic order (x for spin about z), made
    /// square to it.
    /// </remarks>
    public Rotation<HubAxes, Body> HubAxes
    {
        get
        {
            (Vec first, Vec second, Vec third) = DrumDirections(SpinAxis.Si);
            return Rotation<HubAxes, Body>.FromMatrix(
                [first.X, second.X, third.X, first.Y, second.Y, third.Y, first.Z, second.Z, third.Z]);
        }
    }

    /// <summary>
    /// Where the end of a cord is fixed on the hub, counted like <see cref="Cord.StartAngle"/> and not reduced to one turn: from
    /// there to the start angle its wound part lies on the drum, in the sense in which it is wound.
    /// </summary>
    /// <param name="cord">Index of the cord, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such cord.</exception>
    public Angle EndAngle(int cord)
    {
        Allowed.Require(cord >= 0 && cord < Cords.Count, nameof(cord), cord, "the index of a cord");
        Cord one = Cords[cord];
        double wound = (one.Length - one.Hanging).Meters / one.HubRadius.Meters;
        return one.StartAngle + Angle.FromRadians(one.Sense(Rates.Si.Dot(SpinAxis.Si)) * wound);
    }

    /// <summary>
    /// Splits the final spin by its causes. Computes the deployment once more for each cause that is present, and once
    /// without them all.
    /// </summary>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentException">A value is not allowed; the message names it and says what is.</exception>
    /// <exception cref="ComputationRefusedException">One of these results cannot be trusted or does not exist.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public ResidualSpin ExplainFinalSpin(CancellationToken cancellation = default) => new(this, cancellation);

    internal HubConstants CheckedHub()
    {
        Allowed.Require(Hub.SiMass > 0, nameof(Hub), Hub, "made with MassProperties<Body>.Of(...)");
        Allowed.Require(!SpinAxis.IsDefault, nameof(SpinAxis), SpinAxis, "made with Direction<Body>.Of(x, y, z)");
        Vec axis = SpinAxis.Si;
        double spin = Rates.Si.Dot(axis);
        Allowed.Require(
            Math.Abs(spin) >= 1e-9,
            nameof(Rates),
            Rates,
            $"a rate with a part along {nameof(SpinAxis)}, or nothing unwinds; check the order of its components");

        (Vec first, Vec second, _) = DrumDirections(axis);
        HubConstants hub = new()
        {
            Mass = Hub.SiMass,
            Centre = Hub.CentreOfMass.FromOrigin.Si,
            Inertia = Hub.Inertia.Si,
            Axis = axis,
            First = first,
            Second = second,
        };
        if (Rig is not { } rig)
        {
            return hub;
        }

        double viscous = Allowed.ZeroOrPositive(
            rig.ViscousFriction.NewtonMeters, rig.ViscousFriction, $"{nameof(Rig)}.{nameof(rig.ViscousFriction)}", "Give its size at the initial spin.");
        return hub with
        {
            OnBearing = true,
            ViscousFriction = viscous / Math.Abs(spin),
            CoulombFriction = Allowed.ZeroOrPositive(
                rig.CoulombFriction.NewtonMeters, rig.CoulombFriction, $"{nameof(Rig)}.{nameof(rig.CoulombFriction)}", "Give its size."),
            Gravity = new Vec(0, 0, -Allowed.ZeroOrPositive(
                rig.Gravity.MetersPerSecondSquared, rig.Gravity, $"{nameof(Rig)}.{nameof(rig.Gravity)}", "It pulls along −z.")),
        };
    }

    /// <summary>Starting angles count from the body axis that follows the spin axis in cyclic order.</summary>
    private static (Vec First, Vec Second, Vec Third) DrumDirections(Vec axis)
    {
        double x = Math.Abs(axis.X);
        double y = Math.Abs(axis.Y);
        double z = Math.Abs(axis.Z);
        Vec next = z >= x && z >= y ? new(1, 0, 0) : x >= y ? new(0, 1, 0) : new(0, 0, 1);
        Vec first = next - (next.Dot(axis) * axis);
        first = (1 / first.Length) * first;
        return (first, axis.Cross(first), axis);
    }

    internal CordConstants[] CheckedCords(double spin)
    {
        Allowed.Require(Cords is { Count: >= 1 and <= MostCords }, nameof(Cords), Cords, "a list of 1 to 16 cords");
        CordConstants[] cords = new CordConstants[Cords.Count];
        for (int i = 0; i < cords.Length; i++)
        {
            string name = $"{nameof(Cords)}[{i}]";
            Allowed.Require(Cords[i] is not null, name, null, "a cord");
            cords[i] = Cords[i].Check(name, spin);
        }

        return cords;
    }

    internal Surroundings CheckedSurroundings(double spin)
    {
        Surroundings around = new() { SpinSign = Math.Sign(spin) };
        if (Deck is { } deck)
        {
            double radius = Allowed.Positive(deck.Radius.Meters, deck.Radius, $"{nameof(Deck)}.{nameof(deck.Radius)}", "Leave the deck out if there is none.");
            for (int i = 0; i < Cords.Count; i++)
            {
                Allowed.Require(
                    radius >= Cords[i].HubRadius.Meters && Math.Abs(deck.Height.Meters - Cords[i].PlaneHeight.Meters) > SamePlane,
                    nameof(Deck),
                    deck,
                    $"an edge no nearer to the axis than the drum of {nameof(Cords)}[{i}], above or below its plane");
            }

            around = around with { DeckRadius = radius, DeckHeight = Finite.Require(deck.Height.Meters, nameof(Deck)) };
        }

        if (Rig?.FloorBelow is { } floor)
        {
            around = around with { Floor = -Allowed.Positive(floor.Meters, floor, $"{nameof(Rig)}.{nameof(Rig.FloorBelow)}", "It is a distance downward.") };
        }

        if (Rig?.Walls is { } walls)
        {
            around = around with { Walls = Allowed.Positive(walls.Meters, walls, $"{nameof(Rig)}.{nameof(Rig.Walls)}", "It is a distance.") };
        }

        return around;
    }

    internal double CheckedEnd()
    {
        Allowed.Require(Until.Seconds > 0 && double.IsFinite(Until.Seconds), nameof(Until), Until, "a time after the start, and finite");
        return Until.Seconds;
    }

    /// <summary>Absolute tolerances a tenth of the relative one, in the natural size of each number.</summary>
    internal OdeTolerances Tolerances(Mechanism mechanism, double spin)
    {
        Allowed.Require(Tolerance is >= 1e-13 and <= 1e-6, nameof(Tolerance), Tolerance, "1e-13 to 1e-6");
        double rate = Math.Abs(spin);
        double length = 0;
        double weight = 0;
        for (int i = 0; i < mechanism.CordCount; i++)
        {
            length = Math.Max(length, mechanism.CordOf(i).Radius);
            weight += mechanism.CordOf(i).Weight;
        }

        double part = 0.1 * Tolerance;
        double[] absolute = new double[mechanism.Dimension];
        Span<double> a = absolute;
        a[..3].Fill(part * length);
        a.Slice(Mechanism.Attitude, 4).Fill(part);

        // The heavy hub's velocity is measured by the momentum of the light weights.
        a.Slice(Mechanism.Speed, 3).Fill(0.1 * part * length * rate * Math.Min(1, weight / Hub.SiMass));
        a.Slice(Mechanism.Rates, 3).Fill(part * rate);
        foreach (ref readonly Link link in mechanism.Links)
        {
            a.Slice(link.Offset, 3).Fill(part * Math.Min(length, 1));
            a.Slice(link.Offset + 3, 3).Fill(part * length * rate);
        }

        a[^4..].Fill(part * weight * length * length * rate * rate);
        return OdeTolerances.PerComponent(Tolerance, absolute);
    }

    /// <summary>Hub, rates, number of cords and end, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"hub {Hub}, rates {Rates}, {Cords.Count} cords, until {Until}");
}
