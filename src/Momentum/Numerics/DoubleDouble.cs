namespace Momentum.Numerics;

/// <summary>
/// A number as the unevaluated sum of two doubles: about 32 decimal digits. For the few constants of a motion that are
/// multiplied by a long time, where the rounding of a double would grow with it. Equality is of both parts; default is 0.
/// </summary>
/// <remarks>
/// T. J. Dekker, Numerische Mathematik 18 (1971), with the exact product by a fused multiply-add (own formulation from
/// the well-known error-free transformations, not read). Relative error of one operation at most about 2^-102.
/// </remarks>
internal readonly record struct DoubleDouble(double High, double Low)
{
    /// <summary>π; the low part is π less its double, 1.2246467991473532e-16, the sine of the double π.</summary>
    public static readonly DoubleDouble Pi = new(Math.PI, 1.2246467991473532e-16);

    public static implicit operator DoubleDouble(double value)
    {
        return new DoubleDouble(value, 0.0);
    }

    public static explicit operator double(DoubleDouble value)
    {
        return value.High + value.Low;
    }

    public static DoubleDouble operator +(DoubleDouble left, DoubleDouble right)
    {
        DoubleDouble high = TwoSum(left.High, right.High);
        DoubleDouble low = TwoSum(left.Low, right.Low);
        DoubleDouble sum = QuickTwoSum(high.High, high.Low + low.High);
        return QuickTwoSum(sum.High, sum.Low + low.Low);
    }

    public static DoubleDouble operator -(DoubleDouble value)
    {
        return new DoubleDouble(-value.High, -value.Low);
    }

    public static DoubleDouble operator -(DoubleDouble left, DoubleDouble right)
    {
        return left + -right;
    }

    public static DoubleDouble operator *(DoubleDouble left, DoubleDouble right)
    {
        double high = left.High * right.High;
        double low = Math.FusedMultiplyAdd(left.High, right.High, -high);
        low += (left.High * right.Low) + (left.Low * right.High);
        return QuickTwoSum(high, low);
    }

    public static DoubleDouble operator /(DoubleDouble left, DoubleDouble right)
    {
        double first = left.High / right.High;
        DoubleDouble rest = left - (right * first);
        double second = rest.High / right.High;
        rest -= right * second;
        double third = rest.High / right.High;
        DoubleDouble quotient = QuickTwoSum(first, second);
        return quotient + third;
    }

    public static bool operator <(DoubleDouble left, DoubleDouble right)
    {
        return left.High < right.High || (left.High == right.High && left.Low < right.Low);
    }

    public static bool operator >(DoubleDouble left, DoubleDouble right)
    {
        return right < left;
    }

    public static DoubleDouble Abs(DoubleDouble value)
    {
        return value.High < 0.0 ? -value : value;
    }

    /// <summary>Square root of a number that is not negative.</summary>
    public static DoubleDouble Sqrt(DoubleDouble value)
    {
        if (value.High <= 0.0)
        {
            return value.High == 0.0 ? default : new DoubleDouble(double.NaN, 0.0);
        }

        // One step of Newton's rule from the double root; the correction needs only a double.
        double root = Math.Sqrt(value.High);
        DoubleDouble rest = value - ((DoubleDouble)root * root);
        return QuickTwoSum(root, rest.High / (2.0 * root));
    }

    private static DoubleDouble TwoSum(double a, double b)
    {
        double sum = a + b;
        double part = sum - a;
        return new DoubleDouble(sum, (a - (sum - part)) + (b - part));
    }

    /// <summary>As <see cref="TwoSum"/>, for |a| at least |b|.</summary>
    private static DoubleDouble QuickTwoSum(double a, double b)
    {
        double sum = a + b;
        return new DoubleDouble(sum, b - (sum - a));
    }
}
