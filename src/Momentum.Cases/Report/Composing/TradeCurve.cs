using Momentum.Cases.Report.Model;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>Cord length against weight mass for the same final spin, let go as designed and, to compare, at the tangent or radially.</summary>
internal static class TradeCurve
{
    private const int Masses = 60;
    private const double Lightest = 0.4;
    private const double Heaviest = 2.5;

    /// <summary>The chart; null if the let-go rule itself fixes the final spin, so that nothing is traded.</summary>
    public static LineChart? Of(DespinMotion motion)
    {
        DespinDesign design = motion.Design;
        if (design.LetGo is not LetGo.CordAngleRule)
        {
            return null;
        }

        LetGo other = design.LetGo == LetGo.Radial ? LetGo.Tangent : LetGo.Radial;
        ChartSeries[] curves = [.. ((LetGo[])[design.LetGo, other]).Select(l => Curve(motion, l)).OfType<ChartSeries>()];
        return curves.Length == 0 ? null : new LineChart
        {
            Title = "Cord length against weight mass",
            X = new ChartAxis("Weight mass, each", "kg"),
            Y = new ChartAxis("Cord length, each", "m"),
            Series = curves,
            Marks = [new ChartMark(design.WeightMass.Kilograms, design.CordLength.Meters, "this design")],
            Caption = $"Every point of the curves leaves the same final spin rate, {new Figure(motion.FinalSpin.RevolutionsPerMinute, "rpm", 3, 1e-9 * design.Hub.Spin.RevolutionsPerMinute)}.",
        };
    }

    /// <summary>One curve over the masses for which a cord length does it; null if that is fewer than two.</summary>
    private static ChartSeries? Curve(DespinMotion motion, LetGo letGo)
    {
        double mass = motion.Design.WeightMass.Kilograms;
        List<double> masses = [];
        List<double> lengths = [];
        for (int i = 0; i <= Masses; i++)
        {
            double tried = mass * (Lightest + ((Heaviest - Lightest) * i / Masses));
            if (Length(motion, letGo, tried) is { } length)
            {
                masses.Add(tried);
                lengths.Add(length);
            }
        }

        return masses.Count < 2 ? null : new ChartSeries(Name(letGo), masses, lengths);
    }

    private static double? Length(DespinMotion motion, LetGo letGo, double mass)
    {
        DespinDesign design = motion.Design;
        try
        {
            return design.Hub.SizeCordLength(Mass.FromKilograms(mass), motion.FinalSpin, letGo, design.CordLineDensity, design.WeightCount)
                .CordLength.Meters;
        }
        catch (ComputationRefusedException)
        {
            return null;
        }
    }

    private static string Name(LetGo letGo) =>
        letGo == LetGo.Tangent ? "let go at the tangent"
        : letGo == LetGo.Radial ? "let go radially"
        : $"let go at {new Figure(((LetGo.CordAngleRule)letGo).CordAngle.Degrees, "deg", 3)}";
}
