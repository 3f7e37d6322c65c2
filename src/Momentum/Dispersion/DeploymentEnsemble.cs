using Momentum.Quantities;
using Momentum.Tethers;
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
    private DeploymentEnsemble(DeploymentDispersion source) => Source = source;

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

    /// <summary>Angle between the hub's angular momentum after the last let-go and before the first release.</summary>
    public required Sample<Angle> MomentumTilt { get; init; }

    internal DeploymentDispersion Source { get; }

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

    /// <summary>Both ensembles as one, as if all their cases had been run at once.</summary>
    /// <param name="other">Another run of the same deployment and uncertainty, over other cases or with another seed.</param>
    /// <exception cref="ArgumentException">It is of another deployment or uncertainty.</exception>
    public DeploymentEnsemble Merge(DeploymentEnsemble other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Source.Deployment != Source.Deployment || other.Source.Uncertainty != Source.Uncertainty)
        {
            throw new ArgumentException("Only ensembles of the same deployment and the same uncertainty can be merged.", nameof(other));
        }

        return new DeploymentEnsemble(Source)
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
            MomentumTilt = MomentumTilt.Merge(other.MomentumTilt),
        };
    }

    internal static DeploymentEnsemble Of(
        DeploymentDispersion source, DeploymentOutcome[] outcomes, double[] figures, bool[] slack, bool[] deck)
    {
        DeploymentEnsemble ensemble = new(source)
        {
            WrappedBack = Count(DeploymentOutcome.WrappedBack),
            Struck = Count(DeploymentOutcome.Struck),
            NotLetGo = Count(DeploymentOutcome.NotLetGo),
            NotPhysical = Count(DeploymentOutcome.NotPhysical),
            Refused = Count(DeploymentOutcome.Refused),
            WentSlack = slack.Count(happened => happened),
            TouchedDeck = deck.Count(happened => happened),
            FinalSpin = Of<RotationalSpeed>(DeploymentCase.FinalSpin),
            LargestSpin = Of<RotationalSpeed>(DeploymentCase.LargestSpin),
            TransverseRate = Of<RotationalSpeed>(DeploymentCase.TransverseRate),
            Nutation = Of<Angle>(DeploymentCase.Nutation),
            PeakTension = Of<Force>(DeploymentCase.PeakTension),
            MomentumTilt = Of<Angle>(DeploymentCase.MomentumTilt),
        };
        return ensemble.FinalSpin.Count > 0
            ? ensemble
            : throw new ComputationRefusedException(
                $"In none of the {outcomes.Length} cases are all weights let go: in {ensemble.WrappedBack} a cord wraps back, in {ensemble.Struck} a weight or " +
                $"cord strikes something, in {ensemble.NotLetGo} a cord is still on at the end, in {ensemble.NotPhysical} a drawn value is not physical, " +
                $"{ensemble.Refused} are refused. Check the let-go rule, the time of the end and the widths of the scatter, or deploy one case alone to see why.");

        int Count(DeploymentOutcome outcome) => outcomes.Count(o => o == outcome);

        Sample<TQuantity> Of<TQuantity>(int figure)
            where TQuantity : struct, IQuantity
        {
            var values = new List<double>(outcomes.Length);
            for (int i = 0; i < outcomes.Length; i++)
            {
                if (outcomes[i] == DeploymentOutcome.LetGo)
                {
                    values.Add(figures[(i * DeploymentCase.Figures) + figure]);
                }
            }

            return new Sample<TQuantity>([.. values]);
        }
    }

    private Probability Below<TQuantity>(Sample<TQuantity> sample, double bound, double confidence)
        where TQuantity : struct, IQuantity =>
        Probability.Of(sample.CountBetween(double.NegativeInfinity, bound), Cases, confidence);
}
