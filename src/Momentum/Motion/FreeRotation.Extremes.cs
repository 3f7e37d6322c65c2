using Momentum.Numerics;

namespace Momentum.Motion;

/// <summary>What the rates reach over all time, as seen from an axis that is fixed in the body.</summary>
internal sealed partial class FreeRotation
{
    /// <summary>
    /// The largest angle between the momentum and the nearer end of an axis, and the largest rates across and along the
    /// axis, over all time.
    /// </summary>
    /// <remarks>
    /// The rates run round a closed curve, whose points are cn = cos f, sn = sin f, dn = √(cos² f + k'² sin² f): it is the
    /// curve that is searched, by looks all round and golden sections about the highest, so that no time is too long. On the
    /// separatrix itself both halves of the curve are counted, the one that is never reached too: no number tells on which
    /// side of the separatrix a body is.
    /// </remarks>
    /// <param name="axis">Unit vector in body axes.</param>
    /// <param name="nutation">rad, 0 to π/2.</param>
    /// <param name="across">rad/s.</param>
    /// <param name="along">rad/s, without sign.</param>
    public void Extremes(Vec axis, out double nutation, out double across, out double along)
    {
        if (_steady)
        {
            // The momentum has the direction of the rate.
            across = _steadyRate.Cross(axis).Length;
            along = Math.Abs(_steadyRate.Dot(axis));
            nutation = Math.Atan2(across, along);
            return;
        }

        Vec seen = new(_axis1.Dot(axis), _axis2.Dot(axis), _axis3.Dot(axis));
        nutation = Largest(Measure.Nutation, seen);
        across = Largest(Measure.RateAcross, seen) * _rateScale;
        along = Largest(Measure.RateAlong, seen) * _rateScale;
    }

    private double Largest(Measure measure, Vec axis)
    {
        // A multiple of four, so that the corners that the curve has near the separatrix are looked at themselves.
        const int Looks = 64;
        const int Iterations = 50;
        const double Spacing = 2 * Math.PI / Looks;
        double largest = 0;
        double before = Of(measure, -Spacing, axis, out _);
        double here = Of(measure, 0, axis, out double side);
        for (int look = 0; look < Looks; look++)
        {
            double next = Of(measure, (look + 1) * Spacing, axis, out double sideNext);
            if (measure == Measure.Nutation && (side * sideNext < 0 || side == 0))
            {
                // The axis passes through the plane square to the momentum.
                return Math.PI / 2;
            }

            largest = Math.Max(largest, here);
            if (here >= before && here >= next && (here > before || here > next))
            {
                double low = (look - 1) * Spacing;
                double high = (look + 1) * Spacing;
                (_, double highest) = GoldenSection.Highest(
                    (This: this, measure, axis), static (s, place) => s.This.Of(s.measure, place, s.axis, out _), low, high, Iterations);
                largest = Math.Max(largest, highest);
            }

            (before, here, side) = (here, next, sideNext);
        }

        return largest;
    }

    /// <summary>One measure at a place on the curve, rates in scaled units; and the momentum along the axis.</summary>
    private double Of(Measure measure, double place, Vec axis, out double momentumAlong)
    {
        (double sin, double cos) = Math.SinCos(place);
        double dn = Math.Sqrt((cos * cos) + (_complement * _complement * sin * sin));
        Vec momentum = new(_momentumAmplitude.X * cos, _momentumAmplitude.Y * sin, _momentumAmplitude.Z * dn);
        Vec rate = new(_rateAmplitude.X * cos, _rateAmplitude.Y * sin, _rateAmplitude.Z * dn);
        momentumAlong = momentum.Dot(axis);
        return measure switch
        {
            Measure.Nutation => Math.Atan2(momentum.Cross(axis).Length, Math.Abs(momentumAlong)),
            Measure.RateAcross => rate.Cross(axis).Length,
            _ => Math.Abs(rate.Dot(axis)),
        };
    }

    private enum Measure
    {
        Nutation,
        RateAcross,
        RateAlong,
    }
}
