using System.Runtime.CompilerServices;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The attitude as the nine direction cosines of a quaternion that is normalised here, so that a length lost or won by
/// the integration never bends the geometry.
/// </summary>
internal readonly struct Turn
{
    // Rows of the matrix that turns body components into inertial ones.
    private readonly Vec _first;
    private readonly Vec _second;
    private readonly Vec _third;

    public Turn(ReadOnlySpan<double> quaternion)
    {
        double x = quaternion[0];
        double y = quaternion[1];
        double z = quaternion[2];
        double w = quaternion[3];
        double s = 2 / ((x * x) + (y * y) + (z * z) + (w * w));
        _first = new(1 - (s * ((y * y) + (z * z))), s * ((x * y) - (z * w)), s * ((x * z) + (y * w)));
        _second = new(s * ((x * y) + (z * w)), 1 - (s * ((x * x) + (z * z))), s * ((y * z) - (x * w)));
        _third = new(s * ((x * z) - (y * w)), s * ((y * z) + (x * w)), 1 - (s * ((x * x) + (y * y))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec ToInertial(Vec body) => new(_first.Dot(body), _second.Dot(body), _third.Dot(body));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec ToBody(Vec inertial) => (inertial.X * _first) + (inertial.Y * _second) + (inertial.Z * _third);
}
