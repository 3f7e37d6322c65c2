using System.Numerics;
using MathNet.Numerics;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>The free flight of a departed weight, without drag: SI, inertial axes, the place from the inertial origin.</summary>
/// <param name="Place">Where it starts.</param>
/// <param name="Velocity">The velocity that it starts with.</param>
/// <param name="Start">When, from the start of the deployment.</param>
/// <param name="Gravity">Acceleration of gravity.</param>
internal readonly record struct Flight(Vec Place, Vec Velocity, double Start, Vec Gravity)
{
    /// <summary>Place and velocity some time after the start of the flight.</summary>
    internal (Vec Place, Vec Velocity) After(double since) =>
        (Place + (since * Velocity) + (0.5 * since * since * Gravity), Velocity + (since * Gravity));

    /// <summary>How long after the start of the flight the weight meets the floor or a wall; null if it meets neither.</summary>
    internal double? Meets(Surroundings around, out bool onFloor)
    {
        double fall = double.IsNegativeInfinity(around.Floor)
            ? double.PositiveInfinity
            : FirstPositive(0.5 * Gravity.Z, Velocity.Z, Place.Z - around.Floor);
        double wall = double.PositiveInfinity;
        if (!double.IsPositiveInfinity(around.Walls))
        {
            double square = (Velocity.X * Velocity.X) + (Velocity.Y * Velocity.Y);
            double along = (Place.X * Velocity.X) + (Place.Y * Velocity.Y);
            wall = FirstPositive(square, 2 * along, (Place.X * Place.X) + (Place.Y * Place.Y) - (around.Walls * around.Walls));
        }

        onFloor = fall <= wall;
        double first = Math.Min(fall, wall);
        return double.IsPositiveInfinity(first) ? null : first;
    }

    /// <summary>First zero after now of a t² + b t + c; infinite if there is none.</summary>
    private static double FirstPositive(double a, double b, double c)
    {
        if (a == 0)
        {
            return b == 0 || -c / b < 0 ? double.PositiveInfinity : -c / b;
        }

        (Complex one, Complex other) = FindRoots.Quadratic(c, b, a);
        double first = double.PositiveInfinity;
        foreach (Complex root in (ReadOnlySpan<Complex>)[one, other])
        {
            if (root.Imaginary == 0 && root.Real >= 0)
            {
                first = Math.Min(first, root.Real);
            }
        }

        return first;
    }
}
