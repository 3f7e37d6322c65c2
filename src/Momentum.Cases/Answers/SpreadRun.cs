using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Runs the cases of a spread, as many as its verdicts need.</summary>
internal static class SpreadRun
{
    // Of the normal distribution, the level of one standard deviation.
    private const double OneSigma = 0.841344746068543;

    // Bodies that are drawn to see whether they are as stated.
    private const int Bodies = 4000;
    private const double Noticeable = 0.01;
    private const double CutOffThatMatters = 1e-3;

    /// <summary>Runs the cases; null if nothing is uncertain.</summary>
    /// <param name="given">The case.</param>
    /// <param name="model">What computes the cases.</param>
    /// <param name="tests">The requirements that are judged.</param>
    /// <param name="options">How many cases at most, and which draws.</param>
    /// <exception cref="ComputationRefusedException">In no case are all weights let go.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Spread? Of(Case given, CaseModel model, IReadOnlyList<CaseTest> tests, SpreadOptions options)
    {
        if (!model.Inputs.Any)
        {
            return null;
        }

        RequiredShare required = RequiredOf(given);
        long budget = options.Cases ?? given.Spread?.Cases ?? model.UsualCases;
        ulong seed = options.Seed ?? (ulong?)given.Spread?.Seed ?? SpreadOptions.UsualSeed;

        // The last look within the budget; with a budget too small for any, all of it, which shows nothing.
        int looks = required.LooksWithin(budget);
        long most = looks == 0 ? budget : required.CasesAt(looks);
        var passed = new long[tests.Count];
        var unknown = new long[tests.Count];
        long allPassed = 0;
        long anyUnknown = 0;
        long done = 0;
        List<DeployedCase> rows = [];
        foreach (DeployedCase one in model.Run(seed, 0, most, options.Cancellation))
        {
            rows.Add(one);
            bool all = true;
            bool open = false;
            for (int i = 0; i < tests.Count; i++)
            {
                bool? met = tests[i].Judge(one);
                passed[i] += met == true ? 1 : 0;
                unknown[i] += met is null ? 1 : 0;
                all &= met == true;
                open |= met is null;
            }

            allPassed += all ? 1 : 0;
            anyUnknown += open ? 1 : 0;
            done++;
            if (done % 64 == 0)
            {
                options.Progress?.Report((double)done / most);
            }

            bool isLook = required.LooksWithin(done) is > 0 and var look && required.CasesAt(look) == done;
            if (isLook && Enumerable.Range(0, tests.Count).All(i => required.Judge(done, passed[i], unknown[i]).Verdict != ShareVerdict.NotShown))
            {
                break;
            }
        }

        options.Progress?.Report(1);
        return new Spread
        {
            Model = model,
            Ensemble = DeploymentEnsemble.Of(rows),
            Required = required,
            Seed = seed,
            Shares = [.. tests.Select((_, i) => required.Judge(done, passed[i], unknown[i]))],
            Joint = tests.Count == 0 ? null : required.Judge(done, allPassed, anyUnknown),
            Effects = EffectsOf(model),
            DrawnOtherwise = [.. DrawnOtherwise(given, model, seed)],
        };
    }

    /// <summary>What share is required of the case.</summary>
    public static RequiredShare RequiredOf(Case given) =>
        new(given.Spread?.Share?.Value.DecimalFractions ?? 0.997, given.Spread?.Confidence?.Value.DecimalFractions ?? 0.95);

    private static IReadOnlyList<InputEffect> EffectsOf(CaseModel model)
    {
        CaseInputs inputs = model.Inputs;
        if (Run(inputs.AllNominal()) is not { } nominal)
        {
            return [];
        }

        List<InputEffect> effects = [];
        foreach (CaseInput input in inputs.All)
        {
            if (Run(With(input, 1 - OneSigma)) is { } below && Run(With(input, OneSigma)) is { } above)
            {
                effects.Add(new InputEffect(
                    input,
                    below.FinalSpin - nominal.FinalSpin,
                    above.FinalSpin - nominal.FinalSpin,
                    RotationalSpeed.FromRadiansPerSecond(Math.Max(Across(below), Across(above)))));
            }
        }

        return [.. effects.OrderByDescending(e => Math.Max(Math.Abs(e.Below.RadiansPerSecond), Math.Abs(e.Above.RadiansPerSecond)))];

        double Across(DeployedCase one) => (one.FinalTransverseRates - nominal.FinalTransverseRates).Magnitude.RadiansPerSecond;

        double[] With(CaseInput input, double level)
        {
            double[] levels = inputs.AllNominal();
            foreach (int i in inputs.LevelsOf(input))
            {
                levels[i] = level;
            }

            return levels;
        }

        DeployedCase? Run(double[] levels)
        {
            try
            {
                DeployedCase one = model.Run(inputs.Draw(levels), 0);
                return one.Outcome == DeploymentOutcome.LetGo ? one : null;
            }
            catch (ArgumentException)
            {
                return null;
            }
        }
    }

    /// <summary>Where a limit of the value or of physics is so near that the draws are not those stated.</summary>
    private static IEnumerable<string> DrawnOtherwise(Case given, CaseModel model, ulong seed)
    {
        foreach (CaseInput input in model.Inputs.All)
        {
            foreach (ScatterLaw law in new[] { input.Tolerance.Shared, input.Tolerance.Each })
            {
                if (law.CutOff > CutOffThatMatters)
                {
                    yield return FormattableString.Invariant(
                        $"{input.Path} = \"{input.Text}\": {100 * law.CutOff:G2} % of its tolerance lies beyond what is allowed and is not drawn; the mean is {input.Si + law.Mean:G5} and the standard deviation {law.StandardDeviation:G4}{(input.SiUnit.Length > 0 ? $", both in {input.SiUnit}" : "")}.");
                }
            }
        }

        if (given.Part.Count > 0 || model.Body(given) is null || !model.Inputs.All.Any(i => i.Path.StartsWith("vehicle.", StringComparison.Ordinal)))
        {
            yield break;
        }

        // Six elements about the centre of mass, as drawn and as they would be without physics.
        var stated = new double[6][];
        var made = new double[6][];
        for (int k = 0; k < 6; k++)
        {
            stated[k] = new double[Bodies];
            made[k] = new double[Bodies];
        }

        bool moved = false;
        for (int n = 0; n < Bodies; n++)
        {
            Case drawn = model.Inputs.Draw(seed, n).Case;
            double[] asStated = DrawnBody.ElementsAsStated(drawn);
            double[] body = DrawnBody.ElementsOf(drawn, model.Body(drawn)!.Value);
            for (int k = 0; k < 6; k++)
            {
                stated[k][n] = asStated[k];
                made[k][n] = body[k];
                moved |= Math.Abs(asStated[k] - body[k]) > 1e-9 * asStated.Max();
            }
        }

        if (!moved)
        {
            yield break;
        }

        string[] names = ["xx", "yy", "zz", "xy", "xz", "yz"];
        double scale = stated.Max(e => e.Average());
        for (int k = 0; k < 6; k++)
        {
            (double mean, double deviation) was = Moments(stated[k]);
            (double mean, double deviation) now = Moments(made[k]);
            double allowed = Noticeable * Math.Max(was.deviation, 1e-6 * scale);
            if (Math.Abs(now.deviation - was.deviation) > allowed || Math.Abs(now.mean - was.mean) > allowed)
            {
                yield return FormattableString.Invariant(
                    $"vehicle.inertia.{names[k]} moves with the others, since no body has all of what was drawn: mean {now.mean:G5} kg·m², standard deviation {now.deviation:G4} kg·m², where the tolerances alone give {was.mean:G5} and {was.deviation:G4}.");
            }
        }
    }

    private static (double Mean, double Deviation) Moments(double[] values)
    {
        double mean = values.Average();
        return (mean, Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1)));
    }
}
