namespace Momentum.Numerics;

/// <summary>
/// Elliptic integrals and functions, which MathNet.Numerics does not have. The modulus is given by its complement
/// k' = sqrt(1 - k²), so that nothing is lost near k = 1. Arguments are not checked: outside what is stated, and where an
/// iteration does not come to its end, the result is NaN, and the caller refuses it.
/// </summary>
internal static class Elliptic
{
    // Each duplication square-roots the ratio of the arguments and then draws them together by a factor of four: some twenty
    // from the smallest double.
    private const int MaximumDuplications = 64;

    /// <summary>
    /// The complete integral of (a cos² + b sin²) / ((cos² + p sin²) sqrt(cos² + k'² sin²)) over a quarter turn, for
    /// k' &gt; 0, p &gt; 0: R. Bulirsch, Numerische Mathematik 13 (1969) (from memory, not read). Converges quadratically.
    /// </summary>
    public static DoubleDouble Complete(DoubleDouble complement, DoubleDouble p, DoubleDouble a, DoubleDouble b)
    {
        // Half the digits of the result: the last step doubles them.
        const double Accuracy = 1e-17;

        // The ratio of the means is square-rooted in each step: ten from the smallest double to 1, five more to all digits.
        const int MaximumSteps = 32;
        DoubleDouble qc = complement;
        DoubleDouble e = qc;
        DoubleDouble em = 1.0;
        p = DoubleDouble.Sqrt(p);
        b /= p;
        for (int i = 0; i < MaximumSteps; i++)
        {
            DoubleDouble f = a;
            a += b / p;
            DoubleDouble g = e / p;
            b += f * g;
            b += b;
            p += g;
            g = em;
            em += qc;
            if (!(DoubleDouble.Abs(g - qc) > g * Accuracy))
            {
                return DoubleDouble.Pi * 0.5 * (b + (a * em)) / (em * (em + p));
            }

            qc = DoubleDouble.Sqrt(e);
            qc += qc;
            e = qc * em;
        }

        return double.NaN;
    }

    /// <summary>
    /// Jacobi's sn, cn and dn of u for |u| at most half a quarter period, each to full relative accuracy. For k' = 0, where
    /// they are hyperbolic, u is any number. Bulirsch's algorithm (Numerische Mathematik 7 (1965), from memory, not read).
    /// </summary>
    public static (double Sn, double Cn, double Dn) Jacobi(double u, double complement)
    {
        const int MaximumSteps = 24;

        // The next terms are u²/2 and smaller, below rounding.
        const double Small = 1e-8;
        if (Math.Abs(u) < Small)
        {
            return (u, 1.0, 1.0);
        }

        if (complement == 0.0)
        {
            double secant = 1.0 / Math.Cosh(u);
            return (Math.Tanh(u), secant, secant);
        }

        Span<double> first = stackalloc double[MaximumSteps];
        Span<double> second = stackalloc double[MaximumSteps];
        double mean = 1.0;
        double b = complement;
        double c = 1.0;
        int last = 0;
        for (int i = 0; i < MaximumSteps; i++)
        {
            last = i;
            first[i] = mean;
            second[i] = b;
            c = 0.5 * (mean + b);
            if (Math.Abs(mean - b) <= 1e-9 * mean)
            {
                break;
            }

            b = Math.Sqrt(b * mean);
            mean = c;
        }

        (double sine, double cosine) = Math.SinCos(u * c);
        double a = cosine / sine;
        double dn = 1.0;
        c *= a;
        for (int i = last; i >= 0; i--)
        {
            a *= c;
            c *= dn;
            dn = (second[i] + a) / (first[i] + a);
            a = c / first[i];
        }

        double sn = Math.CopySign(1.0 / Math.Sqrt((c * c) + 1.0), sine);
        return (sn, c * sn, dn);
    }

    /// <summary>
    /// Carlson's symmetric integral of the first kind, for arguments not negative, at most one of them 0.
    /// B. C. Carlson, Numerical Algorithms 10 (1995), duplication (from memory, not read).
    /// </summary>
    public static double FirstKind(double x, double y, double z)
    {
        // (2.2e-16 / 4)^(1/6) = 0.0019: then the series to fifth order is true to rounding.
        const double Spread = 0.0019;
        for (int i = 0; i < MaximumDuplications; i++)
        {
            double mean = (x + y + z) / 3.0;
            double dx = 1.0 - (x / mean);
            double dy = 1.0 - (y / mean);
            double dz = -(dx + dy);
            if (Math.Max(Math.Abs(dx), Math.Max(Math.Abs(dy), Math.Abs(dz))) <= Spread)
            {
                double e2 = (dx * dy) - (dz * dz);
                double e3 = dx * dy * dz;
                return (1.0 - (e2 / 10.0) + (e3 / 14.0) + (e2 * e2 / 24.0) - (3.0 * e2 * e3 / 44.0)) / Math.Sqrt(mean);
            }

            double lambda = SumOfProducts(Math.Sqrt(x), Math.Sqrt(y), Math.Sqrt(z));
            x = 0.25 * (x + lambda);
            y = 0.25 * (y + lambda);
            z = 0.25 * (z + lambda);
        }

        return double.NaN;
    }

    /// <summary>
    /// Carlson's symmetric integral of the third kind, for x, y, z not negative, at most one of them 0, and p positive.
    /// Source as for <see cref="FirstKind"/>.
    /// </summary>
    public static double ThirdKind(double x, double y, double z, double p)
    {
        const double Spread = 0.0015;
        double sum = 0.0;
        double power = 1.0;
        for (int i = 0; i < MaximumDuplications; i++)
        {
            double mean = (x + y + z + (2.0 * p)) / 5.0;
            double dx = 1.0 - (x / mean);
            double dy = 1.0 - (y / mean);
            double dz = 1.0 - (z / mean);
            double dp = -0.5 * (dx + dy + dz);
            if (Math.Max(Math.Max(Math.Abs(dx), Math.Abs(dy)), Math.Max(Math.Abs(dz), Math.Abs(dp))) <= Spread)
            {
                double product = dx * dy * dz;
                double e2 = (dx * dy) + (dx * dz) + (dy * dz) - (3.0 * dp * dp);
                double e3 = product + (2.0 * e2 * dp) + (4.0 * dp * dp * dp);
                double e4 = ((2.0 * product) + (e2 * dp) + (3.0 * dp * dp * dp)) * dp;
                double e5 = product * dp * dp;
                double series = 1.0 - (3.0 * e2 / 14.0) + (e3 / 6.0) + (9.0 * e2 * e2 / 88.0) - (3.0 * e4 / 22.0) - (9.0 * e2 * e3 / 52.0) + (3.0 * e5 / 26.0);
                return (power * series / (mean * Math.Sqrt(mean))) + (6.0 * sum);
            }

            double rootX = Math.Sqrt(x);
            double rootY = Math.Sqrt(y);
            double rootZ = Math.Sqrt(z);
            double rootP = Math.Sqrt(p);
            double d = (rootP + rootX) * (rootP + rootY) * (rootP + rootZ);
            double e = (rootP - rootX) * (rootP - rootY) * (rootP - rootZ) / d;
            sum += power / d * Degenerate(e);
            double lambda = SumOfProducts(rootX, rootY, rootZ);
            x = 0.25 * (x + lambda);
            y = 0.25 * (y + lambda);
            z = 0.25 * (z + lambda);
            p = 0.25 * (p + lambda);
            power *= 0.25;
        }

        return double.NaN;
    }

    /// <summary>Carlson's R_C(1, 1 + e) for e from -1 to 1: the inverse tangent, circular or hyperbolic, over its argument.</summary>
    private static double Degenerate(double e)
    {
        if (Math.Abs(e) < 1e-3)
        {
            return 1.0 - (e * ((1.0 / 3.0) - (e * (0.2 - (e * ((1.0 / 7.0) - (e * ((1.0 / 9.0) - (e / 11.0)))))))));
        }

        double root = Math.Sqrt(Math.Abs(e));
        return (e > 0.0 ? Math.Atan(root) : Math.Atanh(root)) / root;
    }

    private static double SumOfProducts(double a, double b, double c)
    {
        return (a * b) + (a * c) + (b * c);
    }
}
