using Momentum.Cases.Answers;
using Momentum.Cases.Quantities;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Sections;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>How far the tolerance of each input, taken alone, moves the final spin.</summary>
internal static class ToleranceSensitivity
{
    /// <summary>The bars, largest share of the spread first; null if no input that the motion depends on has a tolerance.</summary>
    public static Sensitivity? Of(Case given, Spread? spread, RotationalSpeed initial)
    {
        if (spread is null || spread.Sensitivity.Count == 0)
        {
            return null;
        }

        return new Sensitivity(
            new ChartAxis("final spin rate", "rpm"),
            [.. spread.Sensitivity.Select(Bar)],
            "One input at a time, one standard deviation either way, the design as sized. It tells where the spread comes from.");

        Model.SensitivityBar Bar(Dispersion.SensitivityBar bar)
        {
            (string name, string tolerance) = Describe(given, bar.Input);
            return new(name, tolerance, Rpm(bar.AtMinusOneSigma), Rpm(bar.AtPlusOneSigma));
        }

        double Rpm(RotationalSpeed change) =>
            Solver.Rounded(change.RevolutionsPerMinute, initial.RevolutionsPerMinute);
    }

    private static (string Name, string Tolerance) Describe(Case given, UncertainInput input) => input switch
    {
        UncertainInput.SpinInertia => ("Spin inertia", given.Part.Count > 0 ? "from the parts' masses" : Tolerance(SpinInertia(given.Vehicle))),
        UncertainInput.InitialSpin => ("Initial spin rate", Tolerance(given.Spin.Rate)),
        UncertainInput.HubRadius => ("Hub radius", Tolerance(given.Despin.HubRadius)),
        UncertainInput.WeightMass => ("Weight mass, all alike", Tolerance(given.Despin.WeightMass)),
        UncertainInput.CordLength => ("Cord length, all alike", Tolerance(given.Despin.CordLength)),
        UncertainInput.CordLineDensity => ("Line density of the cord", Tolerance(given.Despin.Cord?.LineDensity)),
        UncertainInput.LetGoAngle => ("Cord angle at let-go", $"± {given.Despin.LetGoError!.Text}, one sigma"),
        UncertainInput.SecondWeightDelay => ("Delay of the second weight", $"± {given.Despin.SecondWeightDelay!.Text}, one sigma"),
        _ => throw new ArgumentOutOfRangeException(nameof(input), input, "This input has no name in the report yet."),
    };

    private static string Tolerance<TQuantity>(Stated<TQuantity>? stated)
        where TQuantity : struct, IQuantity => stated is null ? "" : GivenKey.ToleranceOf(stated.Text);

    /// <summary>The stated moment about the spin axis: moving it moves the spin inertia about the centre of mass as much.</summary>
    private static Stated<MassMomentOfInertia>? SpinInertia(VehicleSection vehicle) => vehicle.SpinAxis switch
    {
        Axis.X => vehicle.Inertia?.Xx,
        Axis.Y => vehicle.Inertia?.Yy,
        _ => vehicle.Inertia?.Zz,
    };
}
