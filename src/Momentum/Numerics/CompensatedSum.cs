namespace Momentum.Numerics;

/// <summary>
/// A sum that carries the rounding of each addition along, so that its error does not grow with the number of terms nor
/// depend, to the last digits, on their order.
/// </summary>
/// <remarks>A. Neumaier, Z. angew. Math. Mech. 54, 1974 (from memory, not read).</remarks>
internal struct CompensatedSum
{
    private double _sum;
    private double _carried;

    internal readonly double Value => _sum + _carried;

    internal void Add(double term)
    {
        double next = _sum + term;
        _carried += Math.Abs(_sum) >= Math.Abs(term) ? _sum - next + term : term - next + _sum;
        _sum = next;
    }
}
