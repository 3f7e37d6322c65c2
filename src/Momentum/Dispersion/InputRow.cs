using Momentum.Tethers;
using Momentum.Tethers.Deployment;

namespace Momentum.Dispersion;

/// <summary>One uncertain input: a row of <see cref="UncertainInputs"/>.</summary>
/// <remarks>
/// A row draws one number or several: a body's tensor, or one for each cord. Each number is a function of seed, case, the row's
/// stream and its place in the row, so that a new row, or one more number in a row, never changes another draw.
/// </remarks>
internal sealed class InputRow
{
    /// <summary>Moves a planar case by the numbers drawn.</summary>
    internal delegate void PlanarAction(ref PlanarDraw draw, ReadOnlySpan<double> offsets);

    /// <summary>Moves a deployment by the numbers drawn.</summary>
    internal delegate void SpaceAction(DeploymentDraw draw, ReadOnlySpan<double> offsets);

    /// <summary>The input's public name.</summary>
    internal required UncertainInput Input { get; init; }

    /// <summary>Number of its stream of random numbers: its own, and kept for ever.</summary>
    internal required int Stream { get; init; }

    /// <summary>How each of its numbers scatters, for so many cords; those that do not scatter too.</summary>
    internal required Func<DespinUncertainty, int, InputLaw[]> Laws { get; init; }

    /// <summary>Its nominal value in the plane, SI.</summary>
    internal required Func<PlanarDraw, double> Nominal { get; init; }

    /// <summary>How it acts in the plane; null if the plane knows nothing of it.</summary>
    internal PlanarAction? InPlane { get; init; }

    /// <summary>How it acts in space.</summary>
    internal required SpaceAction InSpace { get; init; }

    /// <summary>Why a design in the plane cannot carry it, as the end of "… scatters, and"; null if it can.</summary>
    internal Func<PlanarDesign, string?> WhyNotInPlane { get; init; } = _ => null;

    /// <summary>Why a deployment cannot carry it; null if it can.</summary>
    internal Func<CordDeployment, string?> WhyNotInSpace { get; init; } = _ => null;

    /// <summary>Whether its scatter is stated, and not a thing that nobody can know.</summary>
    internal bool IsStated { get; init; } = true;
}
