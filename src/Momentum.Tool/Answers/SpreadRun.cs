using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tethers;
using Momentum.Tool.Cases;
using Momentum.Tool.Cases.Quantities;
using UnitsNet;

namespace Momentum.Tool.Answers;

/// <summary>Maps the tolerances of a case to the library's dispersion.</summary>
internal static class SpreadRun
{
    private const int Pieces = 20;

    /// <summary>Runs the ensemble; null if the case states no tolerance that the motion depends on.</summary>
    /// <exception cref="ComputationRefusedException">No case has a final spin.</exception>
    public static Spread? Of(Case given, SpinningBody body, DespinMotion motion, SpreadOptions options)
    {
        DespinSection despin = given.Despin;
        var uncertainty = new DespinUncertainty
        {
            SpinInertia = SpinInertia(given, body),
            InitialSpin = ScatterOf(given.Spin.Rate),
            HubRadius = ScatterOf(despin.HubRadius),
            WeightMass = ScatterOf(despin.WeightMass),
            CordLength = ScatterOf(despin.CordLength),
            CordLineDensity = ScatterOf(despin.Cord?.LineDensity),
            LetGoAngle = despin.LetGoError is { } error ? Scatter.Normal(error.Value) : default,
            SecondWeightDelay = despin.SecondWeightDelay is { } delay ? Scatter.Normal(delay.Value) : default,
            HubMass = body.Mass,
        };
        if (uncertainty == new DespinUncertainty { HubMass = body.Mass })
        {
            return null;
        }

        var dispersion = new DespinDispersion(motion.Design, uncertainty);
        IReadOnlyList<SensitivityBar> sensitivity;
        try
        {
            sensitivity = dispersion.Sensitivity();
        }
        catch (ComputationRefusedException)
        {
            // At the extremes of one input there is no such motion; the ensemble counts those cases, a bar cannot show them.
            sensitivity = [];
        }

        return new Spread(Run(dispersion, options), sensitivity, options.Seed);
    }

    /// <summary>In pieces, so that a long run can tell how far it has come; merged they are what one run would have given.</summary>
    private static DespinEnsemble Run(DespinDispersion dispersion, SpreadOptions options)
    {
        int piece = Math.Max(SpreadOptions.UsualCases, (options.Cases + Pieces - 1) / Pieces);
        DespinEnsemble? whole = null;
        for (int first = 0; first < options.Cases; first += piece)
        {
            DespinEnsemble part = dispersion.Run(Math.Min(piece, options.Cases - first), options.Seed, first);
            whole = whole?.Merge(part) ?? part;
            options.Progress?.Invoke((double)whole.Cases / options.Cases);
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
