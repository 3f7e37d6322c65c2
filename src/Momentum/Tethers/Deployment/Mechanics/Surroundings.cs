namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What the cords and weights may run into, as bare SI numbers.</summary>
internal sealed record Surroundings
{
    // A weight this close to the drum, in drum radii of free cord, has come back to the hub.
    private const double StrikeFraction = 0.05;

    // A lump this close to the drum, in drum radii of free cord, lies on it but for a part in 1e12 of the radius.
    private const double TouchFraction = 1e-6;

    /// <summary>Sign of the initial spin about the drums' axis.</summary>
    public double SpinSign { get; init; } = 1;

    /// <summary>Radius of the deck's edge about the axis; zero if there is none.</summary>
    public double DeckRadius { get; init; }

    /// <summary>Height of the edge above the body origin.</summary>
    public double DeckHeight { get; init; }

    /// <summary>Height of the floor, inertial; negative infinity if there is none.</summary>
    public double Floor { get; init; } = double.NegativeInfinity;

    /// <summary>Distance of the walls from the inertial third axis; infinite if there are none.</summary>
    public double Walls { get; init; } = double.PositiveInfinity;

    public bool HasRoom => !double.IsNegativeInfinity(Floor) || !double.IsPositiveInfinity(Walls);

    /// <summary>Free length that a cord winding up falls below when its weight is back; one that unwinds rises through it.</summary>
    public static double StrikeDistance(CordConstants cord) => StrikeFraction * cord.Radius;

    /// <summary>Free length at which a lump of a heavy cord that has left the drum touches it again.</summary>
    public static double TouchDistance(CordConstants cord) => TouchFraction * cord.Radius;

    /// <summary>Distance to the nearer of floor and walls.</summary>
    public double RoomClearance(Vec position)
    {
        double wall = Walls - Math.Sqrt((position.X * position.X) + (position.Y * position.Y));
        return Math.Min(wall, position.Z - Floor);
    }

    /// <summary>
    /// How far the cord passes from the deck's edge, counted along the axis, on the side where the drum's plane is;
    /// positive where it does not reach the edge's radius.
    /// </summary>
    public double DeckClearance(Mechanism mechanism, in Link link)
    {
        if (DeckRadius == 0)
        {
            return 1;
        }

        CordConstants cord = mechanism.CordOf(link.Cord);
        Vec axis = mechanism.Hub.Axis;
        Vec from = link.IsOnDrum ? (cord.Height * axis) + (cord.Radius * link.Motion.Radial) : link.Phase.Hinge.Place;
        Vec along = link.Motion.Position - from;
        Vec flatFrom = from - (from.Dot(axis) * axis);
        Vec flatAlong = along - (along.Dot(axis) * axis);

        // |flatFrom + s flatAlong| = DeckRadius, 0 < s < 1.
        double a = flatAlong.Square;
        double b = flatFrom.Dot(flatAlong);
        double c = flatFrom.Square - (DeckRadius * DeckRadius);
        double root = (b * b) - (a * c);
        double side = Math.Sign(cord.Height - DeckHeight);
        double whole = Math.Abs(cord.Height - DeckHeight);
        if (a == 0 || root < 0)
        {
            return whole;
        }

        double s = (-b + Math.Sqrt(root)) / a;
        return s is > 0 and < 1 ? side * (from.Dot(axis) + (s * along.Dot(axis)) - DeckHeight) : whole;
    }
}
