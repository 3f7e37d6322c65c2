namespace Momentum;

/// <summary>The factors L D Lᵀ of a positive definite <see cref="Tensor"/>, by which it is solved.</summary>
internal readonly ref struct TensorFactors
{
    private readonly double _d0;
    private readonly double _d1;
    private readonly double _d2;
    private readonly double _l10;
    private readonly double _l20;
    private readonly double _l21;

    internal TensorFactors(in Tensor t)
    {
        _d0 = t.Xx;
        _l10 = t.Xy / t.Xx;
        _l20 = t.Xz / t.Xx;
        _d1 = t.Yy - (_l10 * t.Xy);
        double u = t.Yz - (_l20 * t.Xy);
        _l21 = u / _d1;
        _d2 = t.Zz - (_l20 * t.Xz) - (_l21 * u);
    }

    /// <summary>The determinant over the cube of a length, the trace for instance: below zero or NaN where the tensor is not positive definite.</summary>
    internal double DeterminantOver(double length) => _d0 / length * (_d1 / length) * (_d2 / length);

    /// <summary>The vector that the tensor turns into this one.</summary>
    internal Vec Solve(Vec v)
    {
        double b = v.Y - (_l10 * v.X);
        double c = v.Z - (_l20 * v.X) - (_l21 * b);
        double z = c / _d2;
        double y = (b / _d1) - (_l21 * z);
        return new((v.X / _d0) - (_l10 * y) - (_l20 * z), y, z);
    }
}
