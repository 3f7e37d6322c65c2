namespace Momentum.Inertia;

/// <summary>The box along the axes that holds a set of points.</summary>
internal struct Bounds
{
    private double _lowX;
    private double _lowY;
    private double _lowZ;
    private double _highX;
    private double _highY;
    private double _highZ;

    internal static Bounds Empty => new()
    {
        _lowX = double.PositiveInfinity,
        _lowY = double.PositiveInfinity,
        _lowZ = double.PositiveInfinity,
        _highX = double.NegativeInfinity,
        _highY = double.NegativeInfinity,
        _highZ = double.NegativeInfinity,
    };

    internal readonly Vec Low => new(_lowX, _lowY, _lowZ);

    internal readonly Vec High => new(_highX, _highY, _highZ);

    /// <summary>0, 1 or 2: x, y or z.</summary>
    internal readonly int LongestAxis
    {
        get
        {
            Vec size = (High / 2) - (Low / 2);
            return size.X >= size.Y && size.X >= size.Z ? 0 : size.Y >= size.Z ? 1 : 2;
        }
    }

    internal readonly Vec Centre => new((_lowX / 2) + (_highX / 2), (_lowY / 2) + (_highY / 2), (_lowZ / 2) + (_highZ / 2));

    /// <summary>Of points, three coordinates each.</summary>
    internal static Bounds Of(ReadOnlySpan<double> coordinates)
    {
        Bounds bounds = Empty;
        for (int i = 0; i < coordinates.Length; i += 3)
        {
            bounds.Include(Vec.Read(coordinates[i..]));
        }

        return bounds;
    }

    internal void Include(Vec point)
    {
        _lowX = Math.Min(_lowX, point.X);
        _lowY = Math.Min(_lowY, point.Y);
        _lowZ = Math.Min(_lowZ, point.Z);
        _highX = Math.Max(_highX, point.X);
        _highY = Math.Max(_highY, point.Y);
        _highZ = Math.Max(_highZ, point.Z);
    }

    internal readonly bool Meets(in Bounds other) =>
        _lowX <= other._highX && other._lowX <= _highX &&
        _lowY <= other._highY && other._lowY <= _highY &&
        _lowZ <= other._highZ && other._lowZ <= _highZ;

    /// <summary>What both have in common; empty, its highs below its lows, if that is nothing.</summary>
    internal readonly Bounds Common(in Bounds other) => new()
    {
        _lowX = Math.Max(_lowX, other._lowX),
        _lowY = Math.Max(_lowY, other._lowY),
        _lowZ = Math.Max(_lowZ, other._lowZ),
        _highX = Math.Min(_highX, other._highX),
        _highY = Math.Min(_highY, other._highY),
        _highZ = Math.Min(_highZ, other._highZ),
    };

    /// <summary>Whether a ray may pass through: a little more than the box, so that none is missed by rounding.</summary>
    /// <param name="from">Where the ray begins.</param>
    /// <param name="direction">Its direction; no component is zero.</param>
    internal readonly bool MeetsRay(Vec from, Vec direction)
    {
        double enter = 0;
        double leave = double.PositiveInfinity;
        Clip(_lowX - from.X, _highX - from.X, direction.X, ref enter, ref leave);
        Clip(_lowY - from.Y, _highY - from.Y, direction.Y, ref enter, ref leave);
        Clip(_lowZ - from.Z, _highZ - from.Z, direction.Z, ref enter, ref leave);
        return enter <= leave;
    }

    private static void Clip(double low, double high, double direction, ref double enter, ref double leave)
    {
        const double Wider = 1e-12;
        double margin = Wider * (Math.Abs(low) + Math.Abs(high));
        double first = (low - margin) / direction;
        double last = (high + margin) / direction;
        if (direction < 0)
        {
            first = (high + margin) / direction;
            last = (low - margin) / direction;
        }

        enter = Math.Max(enter, first);
        leave = Math.Min(leave, last);
    }

    internal readonly bool Holds(in Bounds other) =>
        _lowX <= other._lowX && _lowY <= other._lowY && _lowZ <= other._lowZ &&
        _highX >= other._highX && _highY >= other._highY && _highZ >= other._highZ;
}
