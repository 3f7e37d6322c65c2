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

    internal readonly bool Holds(in Bounds other) =>
        _lowX <= other._lowX && _lowY <= other._lowY && _lowZ <= other._lowZ &&
        _highX >= other._highX && _highY >= other._highY && _highZ >= other._highZ;
}
