namespace Momentum.Inertia;

/// <summary>
/// Eigenvalues and eigenvectors of a symmetric 3×3 matrix by cyclic Jacobi rotations, without allocation.
/// </summary>
/// <remarks>
/// Jacobi's method rather than a reduction to tridiagonal form, because it keeps the digits of a small eigenvalue of a
/// positive definite matrix that is well scaled (a thin rod's) and returns vectors orthogonal to rounding however close
/// the values are. Method: W. H. Press et al., Numerical Recipes, "Jacobi Transformations of a Symmetric Matrix" (from
/// memory, not read).
/// </remarks>
internal readonly struct SymmetricEigen
{
    // Three indices turn to rounding in at most seven sweeps; the limit only guards against an endless loop.
    private const int SweepLimit = 40;

    internal readonly double Value0;
    internal readonly double Value1;
    internal readonly double Value2;
    internal readonly Vec Vector0;
    internal readonly Vec Vector1;
    internal readonly Vec Vector2;

    private SymmetricEigen(ReadOnlySpan<double> values, ReadOnlySpan<double> vectors, int i, int j, int k)
    {
        Value0 = values[i];
        Value1 = values[j];
        Value2 = values[k];
        Vector0 = new(vectors[i], vectors[3 + i], vectors[6 + i]);
        Vector1 = new(vectors[j], vectors[3 + j], vectors[6 + j]);
        Vector2 = new(vectors[k], vectors[3 + k], vectors[6 + k]);
    }

    /// <summary>Values ascending, each with its unit vector; the vectors' signs are as they fall.</summary>
    internal static SymmetricEigen Of(Tensor s)
    {
        double largest = s.LargestElement;

        // A power of two scales without rounding and keeps squares in range.
        double scale = largest == 0 ? 1 : Math.ScaleB(1, Math.Clamp(-Math.ILogB(largest), -1000, 1000));
        Span<double> a = [s.Xx * scale, s.Xy * scale, s.Xz * scale, s.Xy * scale, s.Yy * scale, s.Yz * scale, s.Xz * scale, s.Yz * scale, s.Zz * scale];
        Span<double> v = [1, 0, 0, 0, 1, 0, 0, 0, 1];
        for (int sweep = 0; sweep < SweepLimit && !(a[1] == 0 && a[2] == 0 && a[5] == 0); sweep++)
        {
            Rotate(a, v, 0, 1);
            Rotate(a, v, 0, 2);
            Rotate(a, v, 1, 2);
        }

        Span<double> values = [a[0] / scale, a[4] / scale, a[8] / scale];
        int i = 0;
        int j = 1;
        int k = 2;
        Order(values, ref i, ref j);
        Order(values, ref j, ref k);
        Order(values, ref i, ref j);
        return new(values, v, i, j, k);
    }

    private static void Order(ReadOnlySpan<double> values, ref int first, ref int second)
    {
        if (values[second] < values[first])
        {
            (first, second) = (second, first);
        }
    }

    private static void Rotate(Span<double> a, Span<double> v, int p, int q)
    {
        double apq = a[(3 * p) + q];
        double app = a[4 * p];
        double aqq = a[4 * q];

        // Below the rounding of both diagonal elements, so that a small one keeps its own digits.
        if (app + apq == app && aqq + apq == aqq)
        {
            a[(3 * p) + q] = a[(3 * q) + p] = 0;
            return;
        }

        double theta = (aqq - app) / (2 * apq);
        double t = double.IsInfinity(theta * theta)
            ? 1 / (2 * theta)
            : Math.CopySign(1, theta) / (Math.Abs(theta) + Math.Sqrt((theta * theta) + 1));
        double c = 1 / Math.Sqrt((t * t) + 1);
        double s = t * c;
        int r = 3 - p - q;
        double arp = a[(3 * r) + p];
        double arq = a[(3 * r) + q];
        a[4 * p] = app - (t * apq);
        a[4 * q] = aqq + (t * apq);
        a[(3 * p) + q] = a[(3 * q) + p] = 0;
        a[(3 * r) + p] = a[(3 * p) + r] = (c * arp) - (s * arq);
        a[(3 * r) + q] = a[(3 * q) + r] = (s * arp) + (c * arq);
        for (int row = 0; row < 9; row += 3)
        {
            double vp = v[row + p];
            double vq = v[row + q];
            v[row + p] = (c * vp) - (s * vq);
            v[row + q] = (s * vp) + (c * vq);
        }
    }
}
