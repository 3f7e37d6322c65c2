using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>What one cause adds to the final spin.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Share">Final spin with everything, less final spin without this cause alone.</param>
/// <remarks><c>default</c> is the first cause with no share. Equality is by both members.</remarks>
public readonly record struct SpinShare(SpinCause Cause, RotationalSpeed Share)
    : IEqualityOperators<SpinShare, SpinShare, bool>
{
    /// <summary>Cause and share, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Cause}: {Share}");
}
