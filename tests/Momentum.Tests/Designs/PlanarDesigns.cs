using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Designs;

/// <summary>Planar designs at random: four of five of a plausible size, the others of any that is accepted.</summary>
internal static class PlanarDesigns
{
    /// <summary>Draws a design and computes it.</summary>
    internal static void Count(Tally tally, int seed, int number)
    {
        Draw draw = new(seed, number);
        bool plausible = draw.Chance(0.8);
        string size = plausible ? "plausible" : "extreme";
        double radius = Value(draw.Ratio(0.02, 3));
        double gyration = radius * draw.Between(0.4, 1.1);
        double inertia = Value(draw.Ratio(0.5, 5000) * gyration * gyration);
        double spin = Value(draw.Ratio(0.5, 60));
        int weights = draw.Chance(0.6) ? 2 : draw.Chance(0.9) ? draw.Of(3, 4, 6, 8) : (int)draw.Ratio(9, 1000.9);
        double weight = Value(inertia / (radius * radius) * draw.Ratio(1e-3, 0.5) / weights);
        double length = Value(radius * draw.Ratio(0.3, 60));
        double density = draw.Chance(0.5) ? 0 : Value(weight / length * draw.Ratio(1e-3, 3));
        double final = spin * draw.Between(-0.9, 0.9);
        LetGo letGo = draw.Of(0, 1, 2, 3) switch
        {
            0 => LetGo.Tangent,
            1 => LetGo.Radial,
            2 => LetGo.AtCordAngle(Angle.FromRadians(draw.Between(0, Math.PI))),
            _ => LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(spin * draw.Between(-1, 1))),
        };
        double springs = draw.Ratio(0.3, 3000);
        double damping = draw.Chance(0.5) ? 0 : draw.Between(0, 1);
        double kind = draw.Between(0, 1);
        double delay = draw.Ratio(1e-4, 0.3) / spin;
        double hubMass = inertia / (gyration * gyration);

        DespinHub Hub() => new(
            MassMomentOfInertia.FromKilogramSquareMeters(inertia), Length.FromMeters(radius), RotationalSpeed.FromRadiansPerSecond(spin));
        DespinDesign Carrying() => Hub().Carrying(
            Mass.FromKilograms(weight), Length.FromMeters(length), letGo, LinearDensity.FromKilogramsPerMeter(density), weights);
        string cords = density == 0 ? "cords without mass" : "cords with mass";
        if (kind < 0.75)
        {
            tally.Count($"{size}, {cords}", number, null, () => Judge(Carrying().Deploy(), null));
        }
        else if (kind < 0.85)
        {
            tally.Count($"{size}, {cords}, length sized", number, null, () => Judge(
                Hub().SizeCordLength(Mass.FromKilograms(weight), RotationalSpeed.FromRadiansPerSecond(final), letGo, LinearDensity.FromKilogramsPerMeter(density), weights).Deploy(),
                final));
        }
        else if (kind < 0.92)
        {
            tally.Count($"{size}, {cords}, weights sized", number, null, () => Judge(
                Hub().SizeWeightMass(Length.FromMeters(length), RotationalSpeed.FromRadiansPerSecond(final), letGo, LinearDensity.FromKilogramsPerMeter(density), weights).Deploy(),
                final));
        }
        else if (kind < 0.95)
        {
            tally.Count($"{size}, {cords}, one weight late", number, null, () =>
            {
                LateDeparture late = Carrying().Deploy().WithOneWeightLate(Duration.FromSeconds(delay), Mass.FromKilograms(hubMass));
                return new Finding("let go")
                {
                    Wrong = Finite(late.FinalSpin.RadiansPerSecond, late.CordAngle.Radians, late.HubDrift.MetersPerSecond) ? null : $"not finite: {late}",
                    Closure = late.Closure,
                };
            });
        }
        else if (kind < 0.995)
        {
            double rate = springs * weight * spin * spin;
            int swings = Swings(springs, inertia / (weights * weight * radius * radius), length / radius);
            tally.Count($"{size}, springs", number, (swings, "radians of a spring's swing"), () => Judge(
                Hub().CarryingOnSprings(Mass.FromKilograms(weight), Length.FromMeters(length), ForcePerLength.FromNewtonsPerMeter(rate), letGo, damping, weights).Deploy(),
                null));
        }
        else
        {
            tally.Count($"{size}, springs sized", number, null, () => Judge(
                Hub().SizeSpringCord(Mass.FromKilograms(weight), RotationalSpeed.FromRadiansPerSecond(Math.Abs(final)), letGo, damping, weights).Deploy(),
                Math.Abs(final)));
        }

        double Value(double typical) => plausible || draw.Chance(0.5) ? typical : draw.Chance(0.5) ? draw.Ratio(1e-30, 1e30) : typical * draw.Ratio(1e-12, 1e12);
    }

    private static Finding Judge(PlanarMotion motion, double? final)
    {
        double initial = motion.Design.Hub.Spin.RadiansPerSecond;
        double end = motion.LetGoTime.Seconds;
        List<string> wrong = [];
        Require(end > 0, "the let-go time is not positive");
        Require(motion.PeakTension.Tension.Newtons > 0, "the peak tension is not positive");
        Require(motion.PeakTension.Time.Seconds >= 0 && motion.PeakTension.Time.Seconds <= end * (1 + 1e-12), "the peak is not within the motion");
        Require(motion.PeakTension.Tension.Newtons >= motion.AtLetGo.CordTension.Newtons * (1 - 1e-9), "the peak is below the tension at let-go");
        Require(Finite(motion.FinalSpin.RadiansPerSecond, motion.HubTurn.Radians, motion.AtLetGo.WeightSpeed.MetersPerSecond, motion.UnwindTime.Seconds), "a figure is not finite");

        // All the energy in the hub, at most.
        double hub = motion.Design.Hub.SpinInertia.KilogramSquareMeters;
        Require(0.5 * hub * Math.Pow(motion.FinalSpin.RadiansPerSecond, 2) <= motion.Ledger.EnergyAtStart.Total.Joules * (1 + 1e-12), "the hub has more energy than there was");
        if (final is { } wanted)
        {
            Require(Math.Abs(motion.FinalSpin.RadiansPerSecond - wanted) <= 1e-8 * initial, "the final spin is not the one asked for");
        }

        PlanarState? before = null;
        foreach (double share in (ReadOnlySpan<double>)[0, 0.3, 0.7, 1, 1.5])
        {
            PlanarState state = motion.At(Duration.FromSeconds(share * end));
            Require(
                Finite(state.Spin.RadiansPerSecond, state.HubAngle.Radians, state.CordTension.Newtons, state.WeightSpeed.MetersPerSecond, state.CordAngle.Radians, state.WeightPosition(0).X.Meters),
                "a state is not finite");
            Require(state.CordTension.Newtons <= motion.PeakTension.Tension.Newtons * (1 + 1e-9), "a tension is above the peak");
            Require(before is null || state.FreeLength >= before.FreeLength * (1 - 1e-9) || motion is SpringCordMotion, "cord winds back on");
            before = state;
        }

        return new Finding("let go")
        {
            Wrong = wrong.Count == 0 ? null : $"{string.Join("; ", wrong)}: {motion.Design}, let go after {end} s, peak {motion.PeakTension}",
            Closure = motion.Ledger.Closure,
        };

        void Require(bool holds, string what)
        {
            if (!holds && !wrong.Contains(what))
            {
                wrong.Add(what);
            }
        }
    }

    // While a rigid cord would unwind and hinge, of the weight on its spring with the hub against it.
    private static int Swings(double spring, double inertia, double length) =>
        (int)Math.Min(int.MaxValue, (length + Math.PI) * Math.Sqrt(spring * (1 + (1 / inertia))));

    private static bool Finite(params ReadOnlySpan<double> values)
    {
        foreach (double value in values)
        {
            if (!double.IsFinite(value))
            {
                return false;
            }
        }

        return true;
    }
}
