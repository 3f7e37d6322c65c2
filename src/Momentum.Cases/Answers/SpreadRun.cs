using Momentum.Cases.Quantities;
using Momentum.Cases.Sections;
using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Maps the tolerances of a case to the library's dispersion.</summary>
internal static class SpreadRun
{
    private const int Pieces = 20;

    /// <summary>Runs the ensemble; null if the case states no tolerance that the motion depends on.</summary>
    /// <exception cref="ComputationRefusedException">No case has a final spin.</exception>
    public static Spread? Of(Case given, SpinningBody body, PlanarMotion motion, SpreadOptions options)
    {
        DespinUncertainty uncertainty = Uncertainty(given, body) with { Nutation = default };
        if (motion is SpringCordMotion)
        {
            // In the plane spring cords let go together.
            uncertainty = uncertainty with { SecondWeightDelay = default };
        }

        if (uncertainty == new DespinUncertainty { HubMass = body.Mass })
        {
            return null;
        }

        var dispersion = new DespinDispersion(motion.Design, uncertainty);
        IReadOnlyList<SensitivityBar> sensitivity;
        try
        {
            sensitivity = dispersion.Sensitivity(options.Cancellation);
        }
        catch (ComputationRefusedException)
        {
            // At the extremes of one input there is no such motion; the ensemble counts those cases, a bar cannot show them.
            sensitivity = [];
        }

        return new Spread(
            InPieces(options.Cases, SpreadOptions.UsualCases, options, (cases, first) => dispersion.Run(cases, options.Seed, first, options.Cancellation), (one, other) => one.Merge(other)),
            sensitivity,
            options.Seed);
    }

    /// <summary>Runs the ensemble of the whole motion; null if there is none, or if nothing that it depends on is uncertain.</summary>
    /// <exception cref="ComputationRefusedException">In no case are all weights let go.</exception>
    public static WholeSpread? Of(Case given, SpinningBody body, WholeMotion? whole, SpreadOptions options)
    {
        if (whole is null)
        {
            return null;
        }

        DespinUncertainty uncertainty = Uncertainty(given, body);
        if (given.Despin.LetGo.Rate is not null)
        {
            // A let-go at a rate has no angle to miss in the whole motion; its spread in the plane shows what that does.
            uncertainty = uncertainty with { LetGoAngle = default };
        }

        bool wobbles = given.Spin.Nutation is { } wobble && wobble.Value.Radians > 0 && given.Bench is null;
        if (!wobbles && uncertainty == new DespinUncertainty { HubMass = body.Mass })
        {
            return null;
        }

        // A chain of pieces would take most of the time. One straight piece swings as a straight cord of one and a half times
        // its mass does (a third of a rod's mass counts at its end, half of a piece's is put there).
        const double Straight = 2.0 / 3;
        CordDeployment nominal = whole.Result.Deployment;
        var dispersion = new DeploymentDispersion(
            nominal with { Cords = [.. nominal.Cords.Select(c => c with { Segments = 1, LineDensity = Straight * c.LineDensity })] },
            uncertainty with { CordLineDensity = ScatterOf(given.Despin.Cord?.LineDensity, Straight) });
        return new WholeSpread(
            InPieces(options.WholeCases, SpreadOptions.UsualCases / SpreadOptions.CasesForOneWhole, options, (cases, first) => dispersion.Run(cases, options.Seed, first, options.Cancellation), (one, other) => one.Merge(other)),
            options.Seed);
    }

    private static DespinUncertainty Uncertainty(Case given, SpinningBody body)
    {
        DespinSection despin = given.Despin;
        return new DespinUncertainty
        {
            SpinInertia = SpinInertia(given, body),
            InitialSpin = ScatterOf(given.Spin.Rate),
            HubRadius = ScatterOf(despin.HubRadius),
            WeightMass = ScatterOf(despin.WeightMass),
            CordLength = ScatterOf(despin.CordLength),
            CordLineDensity = ScatterOf(despin.Cord?.LineDensity),
            LetGoAngle = despin.LetGoError is { } error ? Scatter.Normal(error.Value) : default,
            SecondWeightDelay = despin.SecondWeightDelay is { } delay ? Scatter.Normal(delay.Value) : default,
            Nutation = ScatterOf(given.Spin.Nutation),
            HubMass = body.Mass,
        };
    }

    /// <summary>In pieces, so that a long run can tell how far it has come; merged they are what one run would have given.</summary>
    private static TEnsemble InPieces<TEnsemble>(
        int cases, int leastPiece, SpreadOptions options, Func<int, long, TEnsemble> run, Func<TEnsemble, TEnsemble, TEnsemble> merge)
        where TEnsemble : class
    {
        int piece = Math.Max(leastPiece, (cases + Pieces - 1) / Pieces);
        TEnsemble? whole = null;
        for (int first = 0; first < cases; first += piece)
        {
            options.Cancellation.ThrowIfCancellationRequested();
            TEnsemble part = run(Math.Min(piece, cases - first), first);
            whole = whole is null ? part : merge(whole, part);
            options.Progress?.Report((double)Math.Min(first + piece, cases) / cases);
        }

        return whole!;
    }

    private static Scatter<TQuantity> ScatterOf<TQuantity>(Stated<TQuantity>? stated)
        where TQuantity : struct, IQuantity => stated?.SpreadKind switch
        {
            SpreadKind.OneSigma => Scatter.Normal(stated.Spread),
            SpreadKind.Limits => Scatter.Uniform(stated.Spread),
            _ => default,
        };

    private static Scatter<LinearDensity> ScatterOf(Stated<LinearDensity>? stated, double times) =>
        ScatterOf(stated is null ? null : stated with { Spread = times * stated.Spread });

    private static Scatter<MassMomentOfInertia> SpinInertia(Case given, SpinningBody body) => given.Vehicle.SpinAxis switch
    {
        _ when given.Part.Count > 0 => FromParts(given, body),
        Axis.X => ScatterOf(given.Vehicle.Inertia!.Xx),
        Axis.Y => ScatterOf(given.Vehicle.Inertia!.Yy),
        _ => ScatterOf(given.Vehicle.Inertia!.Zz),
    };

    /// <summary>
    /// The parts' masses err independently, and each takes its part's share of the spin inertia with it: the root of the sum
    /// of squares. (A mass that errs also moves the centre of mass, which changes the spin inertia in second order only.)
    /// </summary>
    private static Scatter<MassMomentOfInertia> FromParts(Case given, SpinningBody body)
    {
        double variance = 0;
        foreach ((PartSection part, PartContribution<Body> contribution) in given.Part.Zip(body.Parts))
        {
            double relative = part.Mass is { } mass ? Relative(mass.Spread.Kilograms / mass.Value.Kilograms, mass.SpreadKind)
                : Relative(part.Density!.Spread.KilogramsPerCubicMeter / part.Density.Value.KilogramsPerCubicMeter, part.Density.SpreadKind);
            variance += Math.Pow(relative * contribution.Inertia.AboutAxis(body.SpinAxis).KilogramSquareMeters, 2);
        }

        return variance > 0 ? Scatter.Normal(MassMomentOfInertia.FromKilogramSquareMeters(Math.Sqrt(variance))) : default;

        static double Relative(double spread, SpreadKind kind) => kind == SpreadKind.Limits ? spread / Math.Sqrt(3) : spread;
    }
}
