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

    internal readonly double CentreX => (_lowX / 2) + (_highX / 2);

    internal readonly double CentreY => (_lowY / 2) + (_highY / 2);

    internal readonly double CentreZ => (_lowZ / 2) + (_highZ / 2);

    /// <summary>Of points, three coordinates each.</summary>
    internal static Bounds Of(ReadOnlySpan<double> coordinates)
    {
        Bounds bounds = Empty;
        for (int i = 0; i < coordinates.Length; i += 3)
        {
            bounds.Include(coordinates[i], coordinates[i + 1], coordinates[i + 2]);
        }

        return bounds;
    }

    internal void Include(double x, double y, double z)
    {
        _lowX = Math.Min(_lowX, x);
        _lowY = Math.Min(_lowY, y);
        _lowZ = Math.Min(_lowZ, z);
        _highX = Math.Max(_highX, x);
        _highY = Math.Max(_highY, y);
        _highZ = Math.Max(_highZ, z);
    }

    internal readonly bool Holds(in Bounds other) =>
        _lowX <= other._lowX && _lowY <= other._lowY && _lowZ <= other._lowZ &&
        _highX >= other._highX && _highY >= other._highY && _highZ >= other._highZ;
}
