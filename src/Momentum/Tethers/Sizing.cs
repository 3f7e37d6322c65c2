using MathNet.Numerics.RootFinding;
using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>Solves the final spin for cord length or weight mass. SI doubles; all weights and all cords together.</summary>
internal static class Sizing
{
    /// <summary>The wanted final spin as a fraction of the initial one, if the let-go rule leaves it open.</summary>
    internal static double Ratio(DespinHub hub, RotationalSpeed finalSpin, LetGo letGo)
    {
        double final = finalSpin.ToSi();
        if (!double.IsFinite(final))
        {
            throw new ArgumentOutOfRangeException(
                nameof(finalSpin), Quoted.Text(finalSpin), "finalSpin must be a finite rate, negative if reversed.");
        }

        if (letGo is not LetGo.CordAngleRule { Si: { Value: >= 0, IsImmediate: true } } && letGo is not LetGo.SpinRule)
        {
            throw new ComputationRefusedException(
                $"Cord length and weight mass are sized for a let-go at a cord angle from the tangent on, without delay; this one is at {letGo}. " +
                "Size for such an angle and then give the design the rule it is to have, or give both cord length and weight mass.");
        }

        if (letGo is LetGo.SpinRule)
        {
            throw new ComputationRefusedException(
                $"Letting go at a spin rate fixes the final spin at {Quoted.Spin(letGo.Si.Value)}, whatever cord " +
                "length and weight mass, so neither follows from it. Let go at the tangent, at radial or at a cord angle; or give " +
                "both cord length and weight mass.");
        }

        double initial = hub.Spin.ToSi();
        if (final >= initial)
        {
            throw new ComputationRefusedException(
                $"The final spin, {Quoted.Spin(final)}, is not below the initial one, {Quoted.Spin(initial)}: unwinding cords only " +
                "take spin away. Ask for a lower final spin.");
        }

        return final / initial;
    }

    /// <summary>Cord length for a final spin ratio and let-go angle.</summary>
    internal static double CordLength(double hub, double radius, double weights, double density, double ratio, double angle)
    {
        // Massless, own derivation: with X = L + R sin a and P = I + m R² cos² a, the quadratic for the spin is a perfect
        // square in X: m X² (A - P r²) = (A - P r)², A = I + m R².
        double carried = hub + (weights * radius * radius);
        double cosine = Math.Cos(angle);
        double part = hub + (weights * radius * radius * cosine * cosine);
        double left = carried - (part * ratio * ratio);
        double massless = left > 0
            ? ((carried - (part * ratio)) / Math.Sqrt(weights * left)) - (radius * Math.Sin(angle))
            : double.PositiveInfinity;
        if (density == 0)
        {
            return left > 0
                ? massless
                : throw Unreachable(ratio, -Math.Sqrt(carried / part), double.PositiveInfinity);
        }

        double Miss(double length) => new PlanarCords(hub, radius, weights, density, length).Spin(angle) - ratio;

        // With massive cords the final spin has shallow minima over cord length, past which more cord only adds its own mass;
        // small steps up from a cord that is too short find the shortest one that does it.
        const double Step = 1.05;
        const int MostSteps = 20_000;
        double longest = 1000 * (radius + Math.Sqrt(hub / weights)); // a thousand times what stops the hub
        double low = (double.IsFinite(massless) ? massless : Math.Sqrt(carried / weights)) / 1024;
        for (int i = 0; Miss(low) <= 0; i++)
        {
            low = i < 200 ? low / 16 : throw Unreachable(ratio, double.NaN, double.NaN);
        }

        double lowest = Miss(low);
        double high = low * Step;
        for (int i = 0; Miss(high) > 0; i++)
        {
            lowest = Math.Min(lowest, Miss(high));
            double next = high * Step;
            if (Miss(next) >= Miss(high) && Miss(high) < Miss(low))
            {
                double bottom = LeastMiss(Miss, low, next);
                double least = Miss(bottom);
                if (least >= 0 && least <= 1e-14 * (1 + Math.Abs(ratio)))
                {
                    return bottom;
                }

                if (least < 0)
                {
                    high = bottom;
                    break;
                }

                lowest = Math.Min(lowest, least);
            }

            if (!(next <= longest) || i > MostSteps)
            {
                throw Unreachable(ratio, lowest + ratio, longest);
            }

            (low, high) = (high, next);
        }

        return Root(x => Miss(x * high), low / high, 1) * high;
    }

    /// <summary>Mass of all weights together for a final spin ratio and let-go angle.</summary>
    internal static double WeightMass(double hub, double radius, double length, double density, double ratio, double angle)
    {
        double Miss(double weights) => new PlanarCords(hub, radius, weights, density, length).Spin(angle) - ratio;

        double reach = length + (radius * Math.Sin(angle));
        double guess = hub / (reach * reach);
        double high = guess;
        for (int i = 0; Miss(high) > 0; i++)
        {
            high = i < 60
                ? high * 2
                : throw new ComputationRefusedException(
                    $"The cords are too short: even weights without limit leave {Share(Miss(high) + ratio)} of the initial spin, and " +
                    $"{Share(ratio)} is asked for. Lengthen the cords, or let go later (up to radial).");
        }

        double low = high / 2;
        for (int i = 0; Miss(low) <= 0; i++)
        {
            (low, high) = i < 40
                ? (low / 2, low)
                : throw new ComputationRefusedException(
                    $"The cords alone, without weights, leave less spin than asked for: {Share(Miss(low) + ratio)} of the initial spin " +
                    $"against {Share(ratio)}. Shorten the cords or take lighter ones.");
        }

        return Root(x => Miss(x * high), low / high, 1) * high;
    }

    private static double LeastMiss(Func<double, double> miss, double low, double high) =>
        GoldenSection.Highest(miss, static (miss, x) => -miss(x), low, high, 100).Place;

    // The bracket is narrow and the accuracy asked for is that of a double, which Brent's method may report as not reached
    // when no better number exists: so the residual decides.
    private static double Root(Func<double, double> miss, double low, double high)
    {
        if (miss(high) == 0)
        {
            return high;
        }

        Brent.TryFindRoot(miss, low, high, 1e-15, 300, out double root);
        return root >= low && root <= high && Math.Abs(miss(root)) <= 1e-9 * (1 + Math.Abs(miss(low)))
            ? root
            : throw new ComputationRefusedException("The search for the size did not converge; the proportions given are too extreme. Check their units.");
    }

    private static ComputationRefusedException Unreachable(double ratio, double limit, double longest) => new(
        $"No cord length leaves {Share(ratio)} of the initial spin with this let-go" +
        (!double.IsFinite(limit) ? string.Empty
            : double.IsFinite(longest) ? $"; cords of up to {Quoted.Si(longest, "m")} come down to {Share(limit)}"
            : $"; the lowest that any length comes to is {Share(limit)}") +
        ". Ask for less reversed spin.");

    private static string Share(double ratio) => Quoted.Si(100 * ratio, "%");
}
