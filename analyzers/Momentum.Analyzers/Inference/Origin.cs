using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Where a unit, a frame, a point or a sign convention came from: shown beside every report.</summary>
internal readonly struct Origin(Location location, OriginKind kind) : IEquatable<Origin>
{
    internal Location Location { get; } = location;

    internal OriginKind Kind { get; } = kind;

    public bool Equals(Origin other) => Kind == other.Kind && Location.Equals(other.Location);

    public override bool Equals(object? obj) => obj is Origin other && Equals(other);

    public override int GetHashCode() => Location.GetHashCode();
}
