namespace Momentum.Analyzers.Inference;

/// <summary>What components are taken in and about: frame, reference point, sign convention of the products of inertia.</summary>
internal sealed class Context(string? frame = null, string? point = null, string? sign = null) : IEquatable<Context>
{
    internal static Context None { get; } = new();

    internal string? Frame { get; } = frame;

    internal string? Point { get; } = point;

    internal string? Sign { get; } = sign;

    internal bool IsNone => Frame is null && Point is null && Sign is null;

    /// <summary>These, and the other's where these say nothing.</summary>
    internal Context Or(Context other) => other.IsNone ? this : new(Frame ?? other.Frame, Point ?? other.Point, Sign ?? other.Sign);

    /// <summary>Whether nothing is said differently by the two.</summary>
    internal bool Agrees(Context other) =>
        !Differ(Frame, other.Frame) && !PointsDiffer(Point, other.Point) && !Differ(Sign, other.Sign);

    /// <summary>Whether two frames, or two signs, are known to be two.</summary>
    internal static bool Differ(string? left, string? right) => left is not null && right is not null && left != right;

    /// <summary>
    /// Whether two points are known to be two. The type of an inertia about a point says only that it is not the centre of
    /// mass; that of a tensor says it is the centre of mass, and not of what.
    /// </summary>
    internal static bool PointsDiffer(string? left, string? right)
    {
        if (left is null || right is null || string.Equals(left, right, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        if (left == Tensors.Stated || right == Tensors.Stated)
        {
            return IsCentreOfMass(left) || IsCentreOfMass(right);
        }

        bool typed = left == Tensors.CentreOfMass || right == Tensors.CentreOfMass;
        return !(typed && IsCentreOfMass(left) && IsCentreOfMass(right));
    }

    /// <summary>Whether a name speaks of a centre of mass.</summary>
    internal static bool IsCentreOfMass(string name)
    {
        string letters = new(name.Where(char.IsLetter).Select(char.ToLowerInvariant).ToArray());
        return letters is "centre" or "center" || letters.Contains("centreofmass") || letters.Contains("centerofmass") || letters.Contains("ofgravity") || letters.Contains("centroid")
            || Algebra.UnitWords.Split(name.Replace(' ', '_').Replace('.', '_')).Exists(word => word is "com" or "cog" or "cg");
    }

    /// <summary>
    /// What holds of a sum: the frame and sign of either operand, but a point only where both are about it, for an inertia is
    /// moved to another point by adding to it.
    /// </summary>
    internal static Context OfSum(Context left, Context right) => left.IsNone && right.IsNone
        ? None
        : new(left.Frame ?? right.Frame, left.Point == right.Point ? left.Point : null, left.Sign ?? right.Sign);

    /// <summary>What both say alike.</summary>
    internal Context Meet(Context other) => Equals(other)
        ? this
        : new(Frame == other.Frame ? Frame : null, Point == other.Point ? Point : null, Sign == other.Sign ? Sign : null);

    public bool Equals(Context? other) => other is not null && Frame == other.Frame && Point == other.Point && Sign == other.Sign;

    public override bool Equals(object? obj) => Equals(obj as Context);

    public override int GetHashCode() => (Frame?.GetHashCode() ?? 0) ^ (Point?.GetHashCode() ?? 0) ^ (Sign?.GetHashCode() ?? 0);
}
