using Momentum.Cases.Keys;
using Momentum.Cases.Sections;
using Momentum.Tethers;

namespace Momentum.Cases.Answers;

/// <summary>What a reviewer should know of a sized design beyond its requirements.</summary>
internal static class DesignJudge
{
    private const double HeavyCord = 0.2;
    private const double HeavyWeights = 0.1;
    private const double SoftCord = 0.01;

    public static void Judge(Case given, PlanarMotion motion, Findings findings)
    {
        PlanarDesign design = motion.Design;
        double weight = design.WeightMass.Kilograms;
        double cord = (given.Despin.Cord?.LineDensity?.Value.KilogramsPerMeter ?? 0) * design.CordLength.Meters;
        if (cord > HeavyCord * weight)
        {
            findings.Warn(
                given.Despin.Cord!, nameof(CordSection.LineDensity), FormattableString.Invariant($"each cord weighs {100 * cord / weight:G3} % of its weight, and the computation takes the free cord as straight, though a heavy one bows"),
                "Take a lighter cord or a heavier weight, or check the unit of line_density.");
        }

        // Cords sized as springs stretch in the plane too.
        if (given.Despin.Cord?.Stiffness is { } stiffness && motion.PeakTension.Tension > SoftCord * stiffness.Value)
        {
            findings.Warn(
                given.Despin.Cord, nameof(CordSection.Stiffness), FormattableString.Invariant($"the cords stretch by some {100 * (motion.PeakTension.Tension / stiffness.Value):G2} % of their length, which changes the final spin rate, and the planar figures leave it out"),
                "Read and compare the figures of the whole motion, which has it (it needs the full inertia), or take stiffer cords.");
        }

        double body = given.Vehicle.Mass?.Value.Kilograms ?? double.PositiveInfinity;
        if (design.WeightCount * weight > HeavyWeights * body)
        {
            findings.Warn(
                given.Despin, given.Despin.WeightMass is null ? null : nameof(DespinSection.WeightMass), FormattableString.Invariant($"the weights together are {100 * design.WeightCount * weight / body:G3} % of the body's mass"),
                "Usual are a few per cent or less: check the units, or lengthen the cords.");
        }

        if (given.Despin.Cord?.BreakingLoad is { } load && load.Value.Newtons < motion.PeakTension.Tension.Newtons)
        {
            findings.Warn(
                given.Despin.Cord, nameof(CordSection.BreakingLoad), FormattableString.Invariant($"the peak tension, {motion.PeakTension.Tension.Newtons:G4} N, exceeds it: the cord breaks"),
                "Take a stronger cord, or lighter weights on longer cords.");
        }
    }
}
