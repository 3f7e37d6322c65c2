using Momentum.Cases.Sections;
using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The cases of a spread in three dimensions: the nominal deployment with drawn values in place of the uncertain ones.</summary>
internal sealed class SpaceModel(CordDeployment nominal, PlanarMotion motion, IReadOnlyList<TriangleMesh?> meshes, CaseInputs inputs) : CaseModel(inputs)
{
    // Of a turn of the drum: nearer to the start than this nothing has unwound, and no cord can let go.
    private const double BarelyUnwound = 1e-5;

    public override string Name => InPieces ? FormattableString.Invariant($"in three dimensions, each cord in {nominal.Cords[0].Segments} pieces") : "in three dimensions";

    public override int UsualCases => InPieces ? SpreadOptions.UsualCasesInPieces : SpreadOptions.UsualCases;

    public override bool IsSpatial => true;

    private bool InPieces => nominal.Cords[0].Pieces > 1;

    /// <summary>The deployment of a drawn case.</summary>
    /// <exception cref="ArgumentException">What was drawn is not physical.</exception>
    public CordDeployment Deployment(DrawnCase drawn)
    {
        Case given = drawn.Case;
        MassProperties<Body> hub = DrawnBody.Of(given, meshes);
        Direction<Body> axis = nominal.SpinAxis;
        Length height = hub.CentreOfMass.FromOrigin.ComponentAlong(axis) + (given.Despin.CordPlaneOffset?.Value ?? Length.Zero);
        bool stretches = motion.Design is Momentum.Tethers.Springs.SpringCordDesign || given.Despin.Cord?.Stiffness is not null;
        Cord[] cords = new Cord[nominal.Cords.Count];
        for (int i = 0; i < cords.Length; i++)
        {
            DespinSection own = drawn.Cords[i];
            Cord cord = nominal.Cords[i];
            cord = cord with
            {
                WeightMass = own.WeightMass?.Value ?? cord.WeightMass,
                Length = own.CordLength?.Value ?? cord.Length,
                HubRadius = own.HubRadius.Value,
                PlaneHeight = height,
                LineDensity = own.Cord?.LineDensity?.Value ?? cord.LineDensity,
                Stiffness = own.Cord?.Stiffness?.Value ?? cord.Stiffness,
                DampingRatio = stretches ? own.Cord?.Damping?.Value.DecimalFractions ?? 0 : 0,
                BreakingLoad = own.Cord?.BreakingLoad?.Value,
            };
            Duration late = i == drawn.LateCord ? Late(given) : Duration.Zero;
            cords[i] = cord with { LetGo = LetGoOf(own, cord, late) };
        }

        CordDeployment deployment = nominal with
        {
            Hub = hub,
            Cords = cords,
            Rates = Vector<RotationalSpeed, Body>.Along(axis, given.Spin.Rate.Value),
            Deck = given.Despin.DeckEdge is { } edge ? new DeckEdge(edge.Radius.Value, height + edge.Height.Value) : null,
            Rig = given.Bench is { } bench ? WholeMotion.Rig(bench, hub.Inertia.AboutAxis(axis), given.Spin.Rate.Value, height) : null,
        };
        return given.Spin.Nutation is { } nutation && given.Bench is null ? deployment.Wobbling(nutation.Value, drawn.NutationDirection) : deployment;
    }

    public override DeployedCase Run(DrawnCase drawn, long number) => new DeploymentCases(nominal, _ => nominal).Run(Deployment(drawn), number);

    public override IEnumerable<DeployedCase> Run(ulong seed, long first, long count, CancellationToken cancellation) =>
        new DeploymentCases(nominal, number => Deployment(Inputs.Draw(seed, number))).Run(first, count, 0, cancellation);

    public override IEnumerable<DeployedCase> Run(long count, Func<long, DrawnCase> draw, CancellationToken cancellation) =>
        new DeploymentCases(nominal, number => Deployment(draw(number))).Run(0, count, 0, cancellation);

    public override bool Differ(DrawnCase one, DrawnCase other)
    {
        CordDeployment a = FromCentre(Deployment(one));
        CordDeployment b = FromCentre(Deployment(other));
        return (a with { Cords = b.Cords }) != b || !a.Cords.SequenceEqual(b.Cords);
    }

    public override MassProperties<Body>? Body(Case drawn) => DrawnBody.Of(drawn, meshes);

    /// <summary>
    /// The same with heights along the spin axis from the centre of mass: where the body origin lies on that line makes no
    /// difference to any motion.
    /// </summary>
    private static CordDeployment FromCentre(CordDeployment d)
    {
        Length along = d.Hub.CentreOfMass.FromOrigin.ComponentAlong(d.SpinAxis);
        Vector<Length, Body> up = Vector<Length, Body>.Along(d.SpinAxis, along);
        return d with
        {
            Hub = MassProperties<Body>.Of(d.Hub.Mass, Position<Body>.Of(Rounded((d.Hub.CentreOfMass - up).X), Rounded((d.Hub.CentreOfMass - up).Y), Rounded((d.Hub.CentreOfMass - up).Z)), d.Hub.Inertia),
            Cords = [.. d.Cords.Select(c => c with { PlaneHeight = Rounded(c.PlaneHeight - along) })],
            Deck = d.Deck is { } deck ? new DeckEdge(deck.Radius, Rounded(deck.Height - along)) : null,
            Rig = d.Rig is { FloorBelow: { } floor } rig ? rig with { FloorBelow = Rounded(floor + along) } : d.Rig,
        };

        static Length Rounded(Length length) => Length.FromMeters(Math.Round(length.Meters, 12));
    }

    /// <summary>Of either sign: any of the weights may be the late one, and which it is is drawn besides.</summary>
    private static Duration Late(Case given) => Duration.FromSeconds(Math.Abs(given.Despin.SecondWeightDelay?.Value.Seconds ?? 0));

    private static LetGo LetGoOf(DespinSection own, Cord cord, Duration late)
    {
        LetGo rule;
        if (own.LetGo.Rate is { } rate)
        {
            rule = LetGo.AtSpin(rate.Value);
        }
        else
        {
            // Never early of the start; past the other tangent the cord wraps back and never lets go.
            double start = -(cord.Length.Meters - cord.Hanging.Meters) / cord.HubRadius.Meters * (1 - BarelyUnwound);
            double angle = Math.Max(start, (Solver.LetGoAngleOf(own.LetGo) + (own.LetGoError?.Value ?? Angle.Zero)).Radians);
            if (angle > Math.PI)
            {
                return LetGo.Never;
            }

            rule = LetGo.AtCordAngle(Angle.FromRadians(angle));
        }

        return late > Duration.Zero ? rule.Delayed(late) : rule;
    }
}
