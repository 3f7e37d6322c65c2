using Momentum.Tethers;
using Momentum.Tool.Cases;
using Momentum.Tool.Cases.Quantities;
using Momentum.Tool.Report.Model;
using UnitsNet;

namespace Momentum.Tool.Report.Composing;

/// <summary>
/// How far the tolerance of each input, taken alone, moves the final spin: the design is kept as sized and run again with the
/// input at either end. Not a spread: tolerances do not add up like this.
/// </summary>
internal static class ToleranceSensitivity
{
    /// <summary>The bars, largest first; null if no input that the motion depends on has a tolerance.</summary>
    public static Sensitivity? Of(Case given, DespinMotion motion)
    {
        DespinDesign d = motion.Design;
        DespinHub hub = d.Hub;
        double final = motion.FinalSpin.RevolutionsPerMinute;
        List<SensitivityBar> bars = [];
        Add("Spin inertia", SpinInertia(given.Vehicle), (MassMomentOfInertia e) => Run(new DespinHub(hub.SpinInertia + e, hub.Radius, hub.Spin), d.WeightMass, d.CordLength, d.CordLineDensity));
        Add("Initial spin rate", given.Spin.Rate, (RotationalSpeed e) => Run(new DespinHub(hub.SpinInertia, hub.Radius, hub.Spin + e), d.WeightMass, d.CordLength, d.CordLineDensity));
        Add("Hub radius", given.Despin.HubRadius, (Length e) => Run(new DespinHub(hub.SpinInertia, hub.Radius + e, hub.Spin), d.WeightMass, d.CordLength, d.CordLineDensity));
        Add("Weight mass, all alike", given.Despin.WeightMass, (Mass e) => Run(hub, d.WeightMass + e, d.CordLength, d.CordLineDensity));
        Add("Cord length, all alike", given.Despin.CordLength, (Length e) => Run(hub, d.WeightMass, d.CordLength + e, d.CordLineDensity));
        Add("Line density of the cord", given.Despin.Cord?.LineDensity, (LinearDensity e) => Run(hub, d.WeightMass, d.CordLength, d.CordLineDensity + e));
        return bars.Count == 0 ? null : new Sensitivity(
            new ChartAxis("final spin rate", "rpm"),
            [.. bars.OrderByDescending(b => Math.Max(Math.Abs(b.AtLow), Math.Abs(b.AtHigh)))],
            "One input at a time, the design as sized. It tells where a spread comes from, not how large it is in all."
                + (given.Part.Count > 0 ? " The tolerances of the parts are not among these inputs." : ""));

        void Add<TQuantity>(string name, Stated<TQuantity>? stated, Func<TQuantity, double> run)
            where TQuantity : struct, IQuantity
        {
            if (stated is null || stated.SpreadKind == SpreadKind.None)
            {
                return;
            }

            var low = (TQuantity)Quantity.From(-(double)stated.Spread.Value, stated.Spread.Unit);
            try
            {
                bars.Add(new SensitivityBar(name, GivenKey.ToleranceOf(stated.Text), Change(run(low)), Change(run(stated.Spread))));
            }
            catch (Exception refusal) when (refusal is ComputationRefusedException or ArgumentOutOfRangeException)
            {
                // At the end of this tolerance there is no such motion (a negative mass, a rate never reached): no bar.
            }
        }

        // What rounding leaves of no change at all is shown as none.
        double Change(double spin) => Math.Abs(spin - final) < 1e-9 * hub.Spin.RevolutionsPerMinute ? 0 : spin - final;

        double Run(DespinHub otherHub, Mass weight, Length cord, LinearDensity density) =>
            otherHub.Carrying(weight, cord, d.LetGo, density, d.Weights).Deploy().FinalSpin.RevolutionsPerMinute;
    }

    /// <summary>The stated moment about the spin axis: moving it moves the spin inertia about the centre of mass as much.</summary>
    private static Stated<MassMomentOfInertia>? SpinInertia(VehicleSection vehicle) => vehicle.SpinAxis switch
    {
        Axis.X => vehicle.Inertia?.Xx,
        Axis.Y => vehicle.Inertia?.Yy,
        _ => vehicle.Inertia?.Zz,
    };
}
