using Momentum.Quantities;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>A planar de-spin with what is uncertain about it: ensembles of it, and the sensitivity of its final spin.</summary>
/// <remarks>
/// Cords that do not stretch are computed in closed form, spring cords by integration, which takes some twenty times as long;
/// their stiffness E·A is exact, so that a longer one is softer. Every draw is a function of seed, case number and input, so that the same call gives the same bits on any number of
/// threads. Immutable, so safe to share between threads.
/// </remarks>
public sealed class DespinDispersion
{
    private const int ChunkOfCases = 512;

    // Odd, so that the nominal value is one of the levels.
    private const int SensitivityLevels = 201;

    private readonly PlanarDraw _nominal;
    private readonly DrawnInput[] _inputs;
    private readonly int _numbers;
    private readonly double? _hubMass;

    /// <summary>Joins a design and what is uncertain about it.</summary>
    /// <param name="design">The nominal design.</param>
    /// <param name="uncertainty">What scatters about it.</param>
    /// <exception cref="ArgumentException">
    /// A delay scatters and the hub's mass is not given; or, with spring cords, a delay or a line density scatters, or the let-go
    /// angle of cords that let go at a spin rate.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The hub's mass is not positive.</exception>
    public DespinDispersion(PlanarDesign design, DespinUncertainty uncertainty)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(uncertainty);
        Design = design;
        Uncertainty = uncertainty;
        _nominal = PlanarDraw.Of(design);

        // What the plane knows nothing of does not touch it.
        _inputs = [.. DrawnInput.Of(uncertainty, design.WeightCount).Where(i => i.Row.InPlane is not null)];
        _numbers = _inputs.Sum(i => i.Numbers);
        foreach (DrawnInput input in _inputs)
        {
            if (input.Row.WhyNotInPlane(design) is { } why)
            {
                throw new ArgumentException($"{input.Row.Input} scatters, and {why}, or leave that scatter out.", nameof(uncertainty));
            }
        }

        if (Array.Exists(_inputs, i => i.Row.Input == UncertainInput.SecondWeightDelay))
        {
            Mass mass = uncertainty.HubMass ?? throw new ArgumentException(
                "HubMass is not given, and the delay of the second weight scatters: one weight alone pulls the hub aside, and how far " +
                "depends on the hub's mass. Set HubMass to the mass without weights and cords.",
                nameof(uncertainty));
            _hubMass = Allowed.Positive(
                mass.ToSi(), mass, nameof(uncertainty), "HubMass is the mass of the hub without weights and cords.");
        }
    }

    /// <summary>The nominal design.</summary>
    public PlanarDesign Design { get; }

    /// <summary>What scatters about it.</summary>
    public DespinUncertainty Uncertainty { get; }

    /// <summary>Runs an ensemble.</summary>
    /// <param name="cases">How many cases, 1 to 100 million.</param>
    /// <param name="seed">Chooses the draws; any number.</param>
    /// <param name="firstCase">Number of the first case, so that a long run can be made in pieces and merged.</param>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of cases or of the first case is out of range.</exception>
    /// <exception cref="ComputationRefusedException">No case has a final spin.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public DespinEnsemble Run(int cases = 20_000, ulong seed = 1, long firstCase = 0, CancellationToken cancellation = default)
    {
        if (cases is < 1 or > 100_000_000)
        {
            throw new ArgumentOutOfRangeException(nameof(cases), cases, "An ensemble has 1 to 100,000,000 cases.");
        }

        CounterRandom.RequireCase(firstCase, nameof(firstCase));
        var spins = new double[cases];
        var tensions = new double[cases];
        var outcomes = new DespinOutcome[cases];
        Parallel.For(
            0,
            (cases + ChunkOfCases - 1) / ChunkOfCases,
            new ParallelOptions { CancellationToken = cancellation },
            () => DespinCase.Of(Design, _hubMass),
            (chunk, _, one) =>
            {
                Span<double> room = stackalloc double[_numbers];
                int end = Math.Min(cases, (chunk + 1) * ChunkOfCases);
                for (int i = chunk * ChunkOfCases; i < end; i++)
                {
                    PlanarDraw draw = _nominal;
                    foreach (DrawnInput input in _inputs)
                    {
                        input.Row.InPlane!(ref draw, input.Draw(seed, firstCase + i, room));
                    }

                    outcomes[i] = one.Run(draw, out spins[i], out tensions[i], cancellation);
                }

                return one;
            },
            _ => { });
        return DespinEnsemble.Of(this, new CaseRange(seed, firstCase, cases), outcomes, spins, tensions);
    }

    /// <summary>What each uncertain input does to the final spin, alone; the one with the largest share of variance first.</summary>
    /// <remarks>
    /// The standard deviation is taken over evenly spaced probability levels of the input rather than from a slope, because
    /// around radial let-go the slope is zero and the effect is not.
    /// </remarks>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ComputationRefusedException">A value within the scatter has no final spin.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public IReadOnlyList<SensitivityBar> Sensitivity(CancellationToken cancellation = default)
    {
        var one = DespinCase.Of(Design, _hubMass);
        var bars = new List<(UncertainInput Input, double Plus, double Minus, double Variance)>();
        double nominal = FinalSpin(one, null, 0, cancellation);
        double sum = 0;
        foreach (DrawnInput input in _inputs)
        {
            double sigma = input.Law.Deviation;
            var spins = new double[SensitivityLevels];
            for (int i = 0; i < spins.Length; i++)
            {
                spins[i] = FinalSpin(one, input, input.Law.At((i + 0.5) / spins.Length), cancellation);
            }

            double deviation = new Sample<RotationalSpeed>(spins).SiDeviation;
            sum += deviation * deviation;
            bars.Add((input.Row.Input, FinalSpin(one, input, sigma, cancellation) - nominal, FinalSpin(one, input, -sigma, cancellation) - nominal, deviation * deviation));
        }

        return [.. bars
            .OrderByDescending(bar => bar.Variance)
            .ThenBy(bar => bar.Input)
            .Select(bar => new SensitivityBar(
                bar.Input,
                RotationalSpeed.FromRadiansPerSecond(bar.Plus),
                RotationalSpeed.FromRadiansPerSecond(bar.Minus),
                RotationalSpeed.FromRadiansPerSecond(Math.Sqrt(bar.Variance)),
                sum > 0 ? bar.Variance / sum : 0))];
    }

    /// <summary>The final spin with the first number of one input off by so much, all others at their nominal values.</summary>
    private double FinalSpin(DespinCase one, DrawnInput? changed, double offset, CancellationToken cancellation)
    {
        PlanarDraw draw = _nominal;
        if (changed is not null)
        {
            Span<double> offsets = stackalloc double[changed.Numbers];
            offsets.Clear();
            offsets[0] = offset;
            changed.Row.InPlane!(ref draw, offsets);
        }

        DespinOutcome outcome = one.Run(draw, out double spin, out _, cancellation);
        return outcome == DespinOutcome.LetGo
            ? spin
            : throw new ComputationRefusedException(
                (changed is null ? "The nominal design has no final spin: "
                : $"The final spin's sensitivity to {changed.Row.Input} cannot be stated: within its scatter, at {Quoted.Si(changed.Row.Nominal(draw), "in SI units")}, ") +
                (outcome switch
                {
                    DespinOutcome.WrappedBack => "a cord reaches the other tangent before let-go and would wrap the hub.",
                    DespinOutcome.RateNotReached => "the spin rate that lets go is never met.",
                    DespinOutcome.CordsFailed => "the spring cords slacken, wind back or hold, and do not come to let-go.",
                    _ => "the value is not physical.",
                }) + " Narrow the scatter, or change the let-go rule.");
    }
}
