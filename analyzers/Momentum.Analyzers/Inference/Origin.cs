using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Where a unit, a frame, a point or a sign convention came from: shown beside every report.</summary>
internal readonly struct Origin : IEquatable<Origin>
{
    // A node, of which a location is made when a report needs one, or the location of a declaration.
    private readonly object _place;

    internal Origin(SyntaxNode node, OriginKind kind)
    {
        _place = node;
        Kind = kind;
    }

    internal Origin(Location location, OriginKind kind)
    {
        _place = location;
        Kind = kind;
    }

    internal Location Location => _place as Location ?? ((SyntaxNode)_place).GetLocation();

    internal OriginKind Kind { get; }

    public bool Equals(Origin other) => Kind == other.Kind && _place.Equals(other._place);

    public override bool Equals(object? obj) => obj is Origin other && Equals(other);

    public override int GetHashCode() => _place.GetHashCode();
}
