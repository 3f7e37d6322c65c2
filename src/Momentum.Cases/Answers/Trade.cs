using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Cord length against weight mass for the same final spin, let go as designed and, to compare, at the tangent or radially.</summary>
/// <param name="LetGo">How the cords are let go.</param>
/// <param name="WeightMasses">Weight masses, each, ascending.</param>
/// <param name="CordLengths">The cord length, each, that goes with each mass.</param>
internal sealed record Trade(LetGo LetGo, IReadOnlyList<Mass> WeightMasses, IReadOnlyList<Length> CordLengths)
{
    private const int Masses = 60;
    private const double Lightest = 0.4;
    private const double Heaviest = 2.5;

    /// <summary>The trades; none if the let-go rule itself fixes the final spin, so that nothing is traded.</summary>
    public static IReadOnlyList<Trade> Of(PlanarMotion motion)
    {
        if (motion is not DespinMotion { Design: { LetGo: LetGo.CordAngleRule } design } inextensible)
        {
            return [];
        }

        LetGo other = design.LetGo == LetGo.Radial ? LetGo.Tangent : LetGo.Radial;
        return [.. ((LetGo[])[design.LetGo, other]).Select(l => With(inextensible, l)).OfType<Trade>()];
    }

    /// <summary>One trade over the masses for which a cord length does it; null if that is fewer than two.</summary>
    private static Trade? With(DespinMotion motion, LetGo letGo)
    {
        List<Mass> masses = [];
        List<Length> lengths = [];
        for (int i = 0; i <= Masses; i++)
        {
            var tried = Mass.FromKilograms(motion.Design.WeightMass.Kilograms * (Lightest + ((Heaviest - Lightest) * i / Masses)));
            if (LengthFor(motion, letGo, tried) is { } length)
            {
                masses.Add(tried);
                lengths.Add(length);
            }
        }

        return masses.Count < 2 ? null : new Trade(letGo, masses, lengths);
    }

    private static Length? LengthFor(DespinMotion motion, LetGo letGo, Mass mass)
    {
        DespinDesign design = motion.Design;
        try
        {
            return design.Hub.SizeCordLength(mass, motion.FinalSpin, letGo, design.CordLineDensity, design.WeightCount).CordLength;
        }
        catch (ComputationRefusedException)
        {
            return null;
        }
    }
}
