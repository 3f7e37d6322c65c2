using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>What one cause adds to the final spin. Equality is by both members.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Share">Final spin with everything, less final spin without this cause alone.</param>
public readonly record struct SpinShare(SpinCause Cause, RotationalSpeed Share);
