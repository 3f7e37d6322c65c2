using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>The table of uncertain inputs: one row for each, in the order in which they act.</summary>
/// <remarks>
/// A new input is a member of <see cref="UncertainInput"/>, a property of <see cref="DespinUncertainty"/> and a row here, with a
/// stream number that no row has had before.
/// </remarks>
internal static class UncertainInputs
{
    private const string InSpaceInstead = "Use the three-dimensional deployment";

    internal static IReadOnlyList<InputRow> All { get; } =
    [
        new()
        {
            Input = UncertainInput.SpinInertia,
            Stream = 0,
            Laws = (u, _) => Law(u.SpinInertia, u.SpinInertia.Width.ToSi()),
            Nominal = n => n.SpinInertia,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.SpinInertia += by[0],
            InSpace = (d, by) => d.SpinInertia += by[0],
        },
        new()
        {
            Input = UncertainInput.InitialSpin,
            Stream = 1,
            Laws = (u, _) => Law(u.InitialSpin, u.InitialSpin.Width.ToSi()),
            Nominal = n => n.InitialSpin,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.InitialSpin += by[0],
            InSpace = (d, by) => d.InitialSpin += by[0],
        },
        new()
        {
            Input = UncertainInput.HubRadius,
            Stream = 2,
            Laws = (u, _) => Law(u.HubRadius, u.HubRadius.Width.Meters),
            Nominal = n => n.HubRadius,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.HubRadius += by[0],
            InSpace = (d, by) =>
            {
                foreach (ref CordDraw cord in d.Cords)
                {
                    cord.HubRadius += by[0];
                }
            },
        },
        new()
        {
            Input = UncertainInput.WeightMass,
            Stream = 3,
            Laws = (u, _) => Law(u.WeightMass, u.WeightMass.Width.ToSi()),
            Nominal = n => n.WeightMass,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.WeightMass += by[0],
            InSpace = (d, by) =>
            {
                foreach (ref CordDraw cord in d.Cords)
                {
                    cord.WeightMass += by[0];
                }
            },
        },
        new()
        {
            Input = UncertainInput.CordLength,
            Stream = 4,
            Laws = (u, _) => Law(u.CordLength, u.CordLength.Width.Meters),
            Nominal = n => n.CordLength,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.CordLength += by[0],
            InSpace = (d, by) =>
            {
                foreach (ref CordDraw cord in d.Cords)
                {
                    cord.Length += by[0];
                }
            },
        },
        new()
        {
            Input = UncertainInput.CordLineDensity,
            Stream = 5,
            Laws = (u, _) => Law(u.CordLineDensity, u.CordLineDensity.Width.ToSi()),
            Nominal = n => n.CordLineDensity,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.CordLineDensity += by[0],
            InSpace = (d, by) =>
            {
                foreach (ref CordDraw cord in d.Cords)
                {
                    cord.LineDensity += by[0];
                }
            },
            WhyNotInPlane = design => design is SpringCordDesign ? $"spring cords have no mass here. {InSpaceInstead}" : null,
        },
        new()
        {
            Input = UncertainInput.LetGoAngle,
            Stream = 6,
            Laws = (u, _) => Law(u.LetGoAngle, u.LetGoAngle.Width.Radians),
            Nominal = n => n.LetGoMiss,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.LetGoMiss += by[0],
            InSpace = (d, by) =>
            {
                foreach (ref CordDraw cord in d.Cords)
                {
                    cord.LetGoMiss += by[0];
                }
            },
            WhyNotInPlane = design => design is SpringCordDesign && design.LetGo is not LetGo.CordAngleRule
                ? "spring cords that do not let go at a cord angle have no angle to miss here. Let go at a cord angle"
                : null,
            WhyNotInSpace = deployment => deployment.Cords.Any(c => c.LetGo is not LetGo.CordAngleRule)
                ? "a cord does not let go at a cord angle but at a spin rate, at a time or never, which leaves no angle to be missed. " +
                  "Leave LetGoAngle out, or give every cord LetGo.AtCordAngle."
                : null,
        },
        new()
        {
            // The delay, and which cord it falls on.
            Input = UncertainInput.SecondWeightDelay,
            Stream = 7,
            Laws = (u, _) =>
            [
                new(u.SecondWeightDelay.Shape, u.SecondWeightDelay.Width.Seconds),
                u.SecondWeightDelay.Width.Seconds > 0 ? new(ScatterShape.Uniform, 1) : default,
            ],
            Nominal = n => n.LateBy,
            InPlane = (ref PlanarDraw d, ReadOnlySpan<double> by) => d.LateBy += Math.Abs(by[0]),
            InSpace = (d, by) => d.Cords[Math.Min((int)(d.Cords.Length * 0.5 * (by[1] + 1)), d.Cords.Length - 1)].LateBy += Math.Abs(by[0]),
            WhyNotInPlane = design => design is SpringCordDesign ? $"on spring cords all weights let go together here. {InSpaceInstead}" : null,
        },
        new()
        {
            Input = UncertainInput.Nutation,
            Stream = 8,
            Laws = (u, _) => Law(u.Nutation, u.Nutation.Width.Radians),
            Nominal = _ => 0,
            InSpace = (d, by) => d.Nutation += by[0],
        },
        new()
        {
            // Nobody knows it: all round the spin axis with equal chance.
            Input = UncertainInput.NutationDirection,
            Stream = 9,
            Laws = (_, _) => [new(ScatterShape.Uniform, Math.PI)],
            Nominal = _ => 0,
            InSpace = (d, by) => d.NutationDirection += by[0],
            IsStated = false,
        },
    ];

    private static InputLaw[] Law<TQuantity>(Scatter<TQuantity> scatter, double width)
        where TQuantity : struct, IQuantity => [new(scatter.Shape, width)];
}
