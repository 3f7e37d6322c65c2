using Momentum.Quantities;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>The outcome of many cases of one planar de-spin, each with its own draw of what is uncertain.</summary>
/// <remarks>Made by <see cref="DespinDispersion.Run"/>. Immutable, so safe to share between threads.</remarks>
public sealed class DespinEnsemble
{
    internal DespinEnsemble(
        DespinDispersion source,
        CaseRange[] ranges,
        int wrappedBack,
        int rateNotReached,
        int notPhysical,
        int cordsFailed,
        Sample<RotationalSpeed> finalSpin,
        Sample<Force> peakTension)
    {
        Source = source;
        Ranges = ranges;
        WrappedBack = wrappedBack;
        RateNotReached = rateNotReached;
        NotPhysical = notPhysical;
        CordsFailed = cordsFailed;
        FinalSpin = finalSpin;
        PeakTension = peakTension;
    }

    /// <summary>Number of cases, all of them.</summary>
    public int Cases => FinalSpin.Count + Failed;

    /// <summary>Cases without a final spin, for one of the reasons below.</summary>
    public int Failed => WrappedBack + RateNotReached + NotPhysical + CordsFailed;

    /// <summary>Cases in which a cord reached the other tangent before let-go and would have wrapped the hub.</summary>
    public int WrappedBack { get; }

    /// <summary>Cases in which the spin rate that lets go was never met.</summary>
    public int RateNotReached { get; }

    /// <summary>Cases in which a draw was not physical, such as a negative mass: the scatter stated is too wide for its nominal value.</summary>
    public int NotPhysical { get; }

    /// <summary>Cases in which spring cords slackened, wound back or held, and did not come to let-go.</summary>
    public int CordsFailed { get; }

    /// <summary>Final spin over the cases that have one.</summary>
    public Sample<RotationalSpeed> FinalSpin { get; }

    /// <summary>Peak tension of each cord, up to the first let-go, over the cases that have a final spin.</summary>
    public Sample<Force> PeakTension { get; }

    internal DespinDispersion Source { get; }

    internal CaseRange[] Ranges { get; }

    /// <summary>Probability that the final spin is smaller in size than a limit; a failed case counts as not.</summary>
    /// <param name="limit">The limit, positive.</param>
    /// <param name="confidence">Confidence of the interval, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or the confidence not between 0 and 1.</exception>
    public Probability ProbabilityThatFinalSpinIsWithin(RotationalSpeed limit, double confidence = 0.95)
    {
        double bound = Allowed.Positive(limit.ToSi(), limit, nameof(limit), "It bounds the size of the final spin, either way.");
        return Probability.Of(FinalSpin.CountBetween(-bound, bound), Cases, confidence);
    }

    /// <summary>Probability that the peak tension of each cord stays below a limit; a failed case counts as not.</summary>
    /// <param name="limit">The limit, positive.</param>
    /// <param name="confidence">Confidence of the interval, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or the confidence not between 0 and 1.</exception>
    public Probability ProbabilityThatPeakTensionIsBelow(Force limit, double confidence = 0.95)
    {
        double bound = Allowed.Positive(limit.Newtons, limit, nameof(limit), "Give the tension that must not be reached.");
        return Probability.Of(PeakTension.CountBetween(double.NegativeInfinity, bound), Cases, confidence);
    }

    /// <summary>Both ensembles as one, as if all their cases had been run at once.</summary>
    /// <param name="other">Another run of the same design and uncertainty, over other cases or with another seed.</param>
    /// <exception cref="ArgumentException">It is of another design or uncertainty, or has cases in common with this.</exception>
    public DespinEnsemble Merge(DespinEnsemble other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Source.Design != Source.Design || other.Source.Uncertainty != Source.Uncertainty)
        {
            throw new ArgumentException("Only ensembles of the same design and the same uncertainty can be merged.", nameof(other));
        }

        CaseRange.RefuseOverlap(Ranges, other.Ranges, nameof(other));
        return new DespinEnsemble(
            Source,
            [.. Ranges, .. other.Ranges],
            WrappedBack + other.WrappedBack,
            RateNotReached + other.RateNotReached,
            NotPhysical + other.NotPhysical,
            CordsFailed + other.CordsFailed,
            FinalSpin.Merge(other.FinalSpin),
            PeakTension.Merge(other.PeakTension));
    }

    internal static DespinEnsemble Of(DespinDispersion source, CaseRange range, DespinOutcome[] outcomes, double[] spins, double[] tensions)
    {
        Span<int> counts = stackalloc int[5];
        foreach (DespinOutcome outcome in outcomes)
        {
            counts[(int)outcome]++;
        }

        if (counts[(int)DespinOutcome.LetGo] == 0)
        {
            throw new ComputationRefusedException(
                $"None of the {outcomes.Length} cases has a final spin: in {counts[(int)DespinOutcome.WrappedBack]} a cord wraps back, in " +
                $"{counts[(int)DespinOutcome.RateNotReached]} the let-go rate is never met, in {counts[(int)DespinOutcome.NotPhysical]} a drawn value is not " +
                $"physical, in {counts[(int)DespinOutcome.CordsFailed]} spring cords do not come to let-go. Check the let-go rule and the widths of the scatter.");
        }

        return new DespinEnsemble(
            source,
            [range],
            counts[(int)DespinOutcome.WrappedBack],
            counts[(int)DespinOutcome.RateNotReached],
            counts[(int)DespinOutcome.NotPhysical],
            counts[(int)DespinOutcome.CordsFailed],
            new Sample<RotationalSpeed>([.. spins.Where(value => !double.IsNaN(value))]),
            new Sample<Force>([.. tensions.Where(value => !double.IsNaN(value))]));
    }
}
