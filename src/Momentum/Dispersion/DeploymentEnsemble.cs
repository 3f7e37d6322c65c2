using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>The outcome of many deployments in three dimensions, each with its own draw of what is uncertain.</summary>
/// <remarks>
/// Every sample is over the cases in which all weights were let go, as they should be. A case's steps have a relative
/// tolerance of 1e-6, which leaves its figures an error of about 1e-7 (the peak tension of a cord that
/// vibrates 1e-3, since it is looked at some times a step), and its ledger closes to 1e-6, or the case is counted as refused. Made by
/// <see cref="DeploymentDispersion.Run"/>. Immutable, so safe to share between threads.
/// </remarks>
public sealed class DeploymentEnsemble
{
    private readonly Draws? _draws;
    private readonly CaseRange[] _ranges;

    private DeploymentEnsemble(Draws? draws, CaseRange[] ranges)
    {
        _draws = draws;
        _ranges = ranges;
    }

    /// <summary>Number of cases, all of them.</summary>
    public int Cases => FinalSpin.Count + Failed;

    /// <summary>Cases without figures, for one of the five reasons below.</summary>
    public int Failed => WrappedBack + Struck + NotLetGo + NotPhysical + Refused;

    /// <summary>Cases in which a hinged cord came back to the hub and wound up on it again.</summary>
    public int WrappedBack { get; private init; }

    /// <summary>Cases in which a weight or cord struck the hub, ran off its drum, or met the room.</summary>
    public int Struck { get; private init; }

    /// <summary>Cases that ended with a cord still on the hub.</summary>
    public int NotLetGo { get; private init; }

    /// <summary>Cases in which a draw was not physical: the scatter stated is too wide for its nominal value.</summary>
    public int NotPhysical { get; private init; }

    /// <summary>Cases whose computation was refused: a weight is not thrown outward, a cord chatters, the ledger does not close.</summary>
    public int Refused { get; private init; }

    /// <summary>Cases with figures in which a cord went slack on the way.</summary>
    public int WentSlack { get; private init; }

    /// <summary>Cases with figures in which a cord touched the deck's edge, whose force is not computed.</summary>
    public int TouchedDeck { get; private init; }

    /// <summary>Spin at the last let-go, with its sign.</summary>
    public required Sample<RotationalSpeed> FinalSpin { get; init; }

    /// <summary>Largest size of the rate about the spin axis over all time after the last let-go: a hub that tumbles finds spin again.</summary>
    public required Sample<RotationalSpeed> LargestSpin { get; init; }

    /// <summary>Largest rate across the spin axis over all time after the last let-go.</summary>
    public required Sample<RotationalSpeed> TransverseRate { get; init; }

    /// <summary>Largest nutation angle over all time after the last let-go: between the angular momentum and the nearer end of the spin axis.</summary>
    public required Sample<Angle> Nutation { get; init; }

    /// <summary>Largest tension of all cords, where they meet the hub.</summary>
    public required Sample<Force> PeakTension { get; init; }

    /// <summary>Breaking load over peak tension, of the cord in which it is least; null if no cord states a breaking load.</summary>
    public Sample<Ratio>? BreakingLoadRatio { get; init; }

    /// <summary>Angle between the hub's angular momentum after the last let-go and before the first release.</summary>
    public required Sample<Angle> MomentumTilt { get; init; }

    /// <summary>Probability that the spin is smaller in size than a limit, at the last let-go and ever after; a failed case counts as not.</summary>
    /// <param name="limit">The limit, positive.</param>
    /// <param name="confidence">Confidence of the interval, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or the confidence not between 0 and 1.</exception>
    public Probability ProbabilityThatSpinIsWithin(RotationalSpeed limit, double confidence = 0.95) =>
        Below(LargestSpin, Allowed.Positive(limit.ToSi(), limit, nameof(limit), "It bounds the size of the spin, either way."), confidence);

    /// <summary>Probability that the nutation angle stays below a limit for all time; a failed case counts as not.</summary>
    /// <param name="limit">The limit, positive.</param>
    /// <param name="confidence">Confidence of the interval, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or the confidence not between 0 and 1.</exception>
    public Probability ProbabilityThatNutationIsBelow(Angle limit, double confidence = 0.95) =>
        Below(Nutation, Allowed.Positive(limit.Radians, limit, nameof(limit), "It bounds an angle from 0 to 90 degrees."), confidence);

    /// <summary>Probability that the rate across the spin axis stays below a limit for all time; a failed case counts as not.</summary>
    /// <param name="limit">The limit, positive.</param>
    /// <param name="confidence">Confidence of the interval, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or the confidence not between 0 and 1.</exception>
    public Probability ProbabilityThatTransverseRateIsBelow(RotationalSpeed limit, double confidence = 0.95) =>
        Below(TransverseRate, Allowed.Positive(limit.ToSi(), limit, nameof(limit), "It bounds the size of the rate across the axis."), confidence);

    /// <summary>Probability that the peak tension of every cord stays below a limit; a failed case counts as not.</summary>
    /// <param name="limit">The limit, positive.</param>
    /// <param name="confidence">Confidence of the interval, between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not positive, or the confidence not between 0 and 1.</exception>
    public Probability ProbabilityThatPeakTensionIsBelow(Force limit, double confidence = 0.95) =>
        Below(PeakTension, Allowed.Positive(limit.Newtons, limit, nameof(limit), "Give the tension that must not be reached."), confidence);

    /// <summary>The statistics of cases, however they were drawn.</summary>
    /// <param name="cases">The cases, each once.</param>
    /// <exception cref="ComputationRefusedException">In no case are all weights let go.</exception>
    public static DeploymentEnsemble Of(IEnumerable<DeployedCase> cases)
    {
        ArgumentNullException.ThrowIfNull(cases);
        return Of(cases, null, []);
    }

    /// <summary>Both ensembles as one, as if all their cases had been run at once.</summary>
    /// <param name="other">Another run of an equal deployment and an equal uncertainty, over other cases or with another seed.</param>
    /// <exception cref="ArgumentException">
    /// It is of another deployment or uncertainty, or has cases in common with this; the message says in what. Or one of the two
    /// was made of cases that somebody else drew: join the cases instead.
    /// </exception>
    public DeploymentEnsemble Merge(DeploymentEnsemble other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (_draws is null || other._draws is null)
        {
            throw new ArgumentException("An ensemble made of single cases does not know how they were drawn: make one of all the cases.", nameof(other));
        }

        if (_draws.Difference(other._draws) is { } difference)
        {
            throw new ArgumentException($"Only ensembles of an equal deployment and an equal uncertainty can be merged: {difference}.", nameof(other));
        }

        CaseRange.RefuseOverlap(_ranges, other._ranges, nameof(other));
        return new DeploymentEnsemble(_draws, [.. _ranges, .. other._ranges])
        {
            WrappedBack = WrappedBack + other.WrappedBack,
            Struck = Struck + other.Struck,
            NotLetGo = NotLetGo + other.NotLetGo,
            NotPhysical = NotPhysical + other.NotPhysical,
            Refused = Refused + other.Refused,
            WentSlack = WentSlack + other.WentSlack,
            TouchedDeck = TouchedDeck + other.TouchedDeck,
            FinalSpin = FinalSpin.Merge(other.FinalSpin),
            LargestSpin = LargestSpin.Merge(other.LargestSpin),
            TransverseRate = TransverseRate.Merge(other.TransverseRate),
            Nutation = Nutation.Merge(other.Nutation),
            PeakTension = PeakTension.Merge(other.PeakTension),
            BreakingLoadRatio = BreakingLoadRatio is { } ratios && other.BreakingLoadRatio is { } others ? ratios.Merge(others) : null,
            MomentumTilt = MomentumTilt.Merge(other.MomentumTilt),
        };
    }

    internal static DeploymentEnsemble Of(IEnumerable<DeployedCase> cases, Draws? draws, CaseRange[] ranges)
    {
        var counts = new int[Enum.GetValues<DeploymentOutcome>().Length];
        List<double>[] figures = [[], [], [], [], [], [], []];
        int slack = 0;
        int deck = 0;
        foreach (DeployedCase one in cases)
        {
            counts[(int)one.Outcome]++;
            if (one.Outcome != DeploymentOutcome.LetGo)
            {
                continue;
            }

            figures[0].Add(one.FinalSpin.ToSi());
            figures[1].Add(one.LargestSpin.ToSi());
            figures[2].Add(one.TransverseRate.ToSi());
            figures[3].Add(one.Nutation.Radians);
            figures[4].Add(one.PeakTension.Newtons);
            figures[5].Add(one.MomentumTilt.Radians);
            if (one.BreakingLoadRatio is { } ratio)
            {
                figures[6].Add(ratio);
            }

            slack += one.WentSlack ? 1 : 0;
            deck += one.TouchedDeck ? 1 : 0;
        }

        int wrapped = counts[(int)DeploymentOutcome.WrappedBack];
        int struck = counts[(int)DeploymentOutcome.Struck];
        int on = counts[(int)DeploymentOutcome.NotLetGo];
        int notPhysical = counts[(int)DeploymentOutcome.NotPhysical];
        int refused = counts[(int)DeploymentOutcome.Refused];
        if (figures[0].Count == 0)
        {
            throw new ComputationRefusedException(
                $"In none of the {counts.Sum()} cases are all weights let go: in {wrapped} a cord wraps back, in {struck} a weight or " +
                $"cord strikes something, in {on} a cord is still on at the end, in {notPhysical} a drawn value is not physical, " +
                $"{refused} are refused. Check the let-go rule, the time of the end and the widths of the scatter, or deploy one case alone to see why.");
        }

        return new DeploymentEnsemble(draws, ranges)
        {
            WrappedBack = wrapped,
            Struck = struck,
            NotLetGo = on,
            NotPhysical = notPhysical,
            Refused = refused,
            WentSlack = slack,
            TouchedDeck = deck,
            FinalSpin = new([.. figures[0]]),
            LargestSpin = new([.. figures[1]]),
            TransverseRate = new([.. figures[2]]),
            Nutation = new([.. figures[3]]),
            PeakTension = new([.. figures[4]]),
            MomentumTilt = new([.. figures[5]]),
            BreakingLoadRatio = figures[6].Count == figures[0].Count ? new([.. figures[6]]) : null,
        };
    }

    /// <summary>How the cases of an ensemble were drawn.</summary>
    internal sealed record Draws(CordDeployment Deployment, DespinUncertainty Uncertainty)
    {
        /// <summary>In what two differ; null if they are equal by value.</summary>
        internal string? Difference(Draws other) =>
            Uncertainty != other.Uncertainty ? $"what is uncertain differs, {Uncertainty} and {other.Uncertainty}"
            : !Deployment.Cords.SequenceEqual(other.Deployment.Cords) ? "the cords differ"
            : (Deployment with { Cords = other.Deployment.Cords }) != other.Deployment ? $"the deployments differ, {Deployment} and {other.Deployment}"
            : null;
    }

    private Probability Below<TQuantity>(Sample<TQuantity> sample, double bound, double confidence)
        where TQuantity : struct, IQuantity =>
        Probability.Of(sample.CountBetween(double.NegativeInfinity, bound), Cases, confidence);
}
