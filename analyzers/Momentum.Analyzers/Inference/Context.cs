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
        (Frame is null || other.Frame is null || Frame == other.Frame)
        && (Point is null || other.Point is null || Point == other.Point)
        && (Sign is null || other.Sign is null || Sign == other.Sign);

    /// <summary>What both say alike.</summary>
    internal Context Meet(Context other) => Equals(other)
        ? this
        : new(Frame == other.Frame ? Frame : null, Point == other.Point ? Point : null, Sign == other.Sign ? Sign : null);

    public bool Equals(Context? other) => other is not null && Frame == other.Frame && Point == other.Point && Sign == other.Sign;

    public override bool Equals(object? obj) => Equals(obj as Context);

    public override int GetHashCode() => (Frame?.GetHashCode() ?? 0) ^ (Point?.GetHashCode() ?? 0) ^ (Sign?.GetHashCode() ?? 0);
}
