using MathNet.Numerics.RootFinding;
using Momentum.Numerics;

namespace Momentum.Tethers.Springs;

/// <summary>
/// Finds length and spring of the cords whose final spin is the wanted one and has no slope over the initial spin. Numbers
/// without units, as in <see cref="SpringCordEquations"/>. Not thread-safe.
/// </summary>
internal sealed class SpringCordSizing
{
    // How far from the closed form a spring is looked for, softer and stiffer, and length or weights.
    private const double Softest = 5;
    private const double Stiffest = 60;
    private const double Farthest = 50;

    /// <summary>Hub radii; a shorter cord has hardly begun to unwind.</summary>
    internal const double Shortest = 0.01;

    // The search widens by this factor at most, so as not to step over a pair of zeros.
    private const double LargestStep = 1.2;

    // What final spin and slope may miss; the runs err by 1e-12 and a slope by 1e-10.
    private const double LargestMiss = 1e-9;
    private const double LargestSlope = 1e-7;

    // Some hundred times what a search takes.
    private const long MostSteps = 3_000_000;
    private const int MostWidenings = 1000;

    private readonly SpringCordRun _run = new(watching: false);
    private readonly double _angle;
    private readonly CancellationToken _cancellation;

    /// <summary>Makes room.</summary>
    /// <param name="angle">Cord angle of the let-go.</param>
    /// <param name="cancellation">Ends every search early.</param>
    internal SpringCordSizing(double angle, CancellationToken cancellation)
    {
        _angle = angle;
        _cancellation = cancellation;
    }

    /// <summary>
    /// The design if the spring stretched as by the pull at rest: closed form at the tangent, a guess at other angles.
    /// </summary>
    /// <remarks>
    /// Own derivation, in the manner of J. V. Fedor, NASA TN D-1676 (1963), which by its summary replaces the solution of the
    /// equations of motion by algebra, with an estimated force. At let-go: momentum r + q y = 1; energy
    /// r² + q y² (1 + h z) = 1; pull k x = h m f O²; with r = w/w0, y = O/w0, q = m f²/A, A = I + m R², h = I/A and the
    /// stretch z = x/f. Hence y (1 + h z) = 1 + r, m L²/A = (1 - r)(1 + h z)(1 - z)²/(1 + r),
    /// h m w0²/k = z (1 + h z)²/(1 + r)²; and no slope over w0 where (1 + 3 h z)(1 - z) r = (1 - r) z (2 - h + 3 h z). For
    /// I much larger than m R²: z = r, m L² = I (1 - r)³, k = m w0²/r.
    /// </remarks>
    internal static (double Length, double Spring) AtRest(double inertia, double ratio, double angle)
    {
        double carried = inertia + 1;
        double h = inertia / carried;
        double b = 2 - h - ratio - (2 * h * ratio);
        double z = 2 * ratio / (b + Math.Sqrt((b * b) + (12 * h * ratio)));
        double reach = Math.Sqrt(carried * (1 - ratio) * (1 + (h * z)) / (1 + ratio)) * (1 - z);
        double spring = h * (1 + ratio) * (1 + ratio) / (z * (1 + (h * z)) * (1 + (h * z)));
        double length = reach - Math.Sin(angle);
        return (length > 0 ? length : 0.1 * reach, spring);
    }

    /// <summary>The weight mass, as I/(m R²), of the same design for a length.</summary>
    internal static double InertiaAtRest(double length, double ratio, double angle)
    {
        double reach = (length + Math.Sin(angle)) / (1 - ratio);
        double carried = reach * reach / (1 - ratio);
        return Math.Max(carried - 1, 0.1 * carried);
    }

    /// <summary>The final spin over the initial one; NaN if the cords do not come to let-go.</summary>
    internal double Final(in SpringCordProportions proportions)
    {
        if (_run.Steps > MostSteps)
        {
            throw new ComputationRefusedException(
                "The search for spring cords was given up after three million steps of integration: on the way their springs swing too fast, or the cords are too short, for it. " +
                "Ask for less final spin, take heavier weights or longer cords, or give the cords damping.");
        }

        try
        {
            return _run.Run(proportions, new LetGoRule(LetGoKind.CordAngle, _angle, 0), cancellation: _cancellation) == SpringCordRun.Outcome.LetGo ? _run.State[SpringCordEquations.Spin] : double.NaN;
        }
        catch (IntegrationRefusedException)
        {
            return double.NaN;
        }
    }

    /// <summary>Slope of the final spin over the initial spin: r - 2 dr/dln k, since the spring counts as k/(m w0²).</summary>
    internal double ByInitialSpin(SpringCordProportions at) =>
        Final(at) - (2 * Slope(x => Final(at with { Spring = at.Spring * x }), at));

    /// <summary>Slope of the final spin, over the initial one, by the logarithm of the hub's inertia.</summary>
    internal double ByInertia(SpringCordProportions at) => Slope(x => Final(at with { Inertia = at.Inertia * x }), at);

    /// <summary>Sizes the spring, and with it length or weights.</summary>
    /// <param name="ratio">Wanted final spin over initial spin, above 0 and below 1.</param>
    /// <param name="near">Where to begin; what is not sized counts.</param>
    /// <param name="weights">Whether the weights are sized rather than the length.</param>
    /// <returns>The proportions, or null if there are none near the beginning.</returns>
    internal SpringCordProportions? Size(double ratio, SpringCordProportions near, bool weights)
    {
        SpringCordProportions found = near;

        // A cord without stretch has the slope r > 0; the softer the spring, the lower.
        double softness = Fall(SlopeAt, 1 / near.Spring, 1.1, Softest, Stiffest, 1e-10, LargestSlope);
        return double.IsNaN(softness) ? null : found;

        // Each fit begins at the one before.
        double SlopeAt(double softness)
        {
            SpringCordProportions start = found with { Spring = 1 / softness };
            double scale = Fall(x => Final(Scaled(start, x)) - ratio, 1, 1.01, Farthest, Farthest, 1e-13, LargestMiss);
            if (double.IsNaN(scale))
            {
                return double.NaN;
            }

            found = Scaled(start, scale);
            return found.Length >= Shortest ? ByInitialSpin(found) : double.NaN;
        }

        SpringCordProportions Scaled(SpringCordProportions start, double scale) =>
            weights ? start with { Inertia = start.Inertia / scale } : start with { Length = start.Length * scale };
    }

    /// <summary>
    /// Where a function that falls passes zero, looked for from a guess outward; NaN if it does not. Where the function does
    /// not exist (cords too soft or too long to come to let-go) it counts as past zero.
    /// </summary>
    /// <param name="function">Falls.</param>
    /// <param name="guess">Where to begin, positive.</param>
    /// <param name="step">Factor of the first step.</param>
    /// <param name="up">How many times the guess to look at most.</param>
    /// <param name="down">Into how many times smaller.</param>
    /// <param name="accuracy">Relative accuracy of the place.</param>
    /// <param name="largestMiss">The largest value of the function allowed there.</param>
    private static double Fall(
        Func<double, double> function, double guess, double step, double up, double down, double accuracy, double largestMiss)
    {
        double Known(double x)
        {
            double value = function(x);
            return double.IsNaN(value) ? -1 : value;
        }

        double low = guess;
        double high = guess;
        bool rising = Known(guess) > 0;
        int widenings = 0;
        do
        {
            (low, high) = rising ? (high, high * step) : (low / step, low);
            if (!(high <= guess * up && low >= guess / down) || ++widenings > MostWidenings)
            {
                return double.NaN;
            }

            step = Math.Min(step * step, LargestStep);
        }
        while (Known(rising ? high : low) > 0 == rising);

        // The residual decides; Brent's method may report an accuracy as not reached when no better number exists.
        Brent.TryFindRoot(x => Known(x * low), 1, high / low, accuracy, 100, out double root);
        return root >= 1 && root <= high / low && Math.Abs(Known(root * low)) <= largestMiss ? root * low : double.NaN;
    }

    // The weights swing on the spring, and the hub against them, through about L sqrt(k (1 + 1/j)) radians, so that the final
    // spin has features of that fineness; a step of a thousandth of one errs by 1e-12, and the runs' error over it by 1e-10.
    // Close to where the cords just fail to come to let-go the final spin falls off like a square root, and no step is fine
    // enough: there two steps disagree, and there is no slope to speak of.
    private static double Slope(Func<double, double> function, in SpringCordProportions at)
    {
        const double Finer = 0.25;
        const double Agreed = 1e-6;
        double step = 2e-3 / (1 + (at.Length * Math.Sqrt(at.Spring * (1 + (1 / at.Inertia)))));
        double slope = SpinSensitivity.Slope(function, step);
        double finer = SpinSensitivity.Slope(function, Finer * step);
        return Math.Abs(slope - finer) <= Agreed * (1 + Math.Abs(slope)) ? slope : double.NaN;
    }
}
