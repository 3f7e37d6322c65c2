using System.Globalization;
using Momentum.Cases.Keys;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The planar motion against time.</summary>
internal static class PlanarHistory
{
    // How long after let-go it goes on if nobody says, as a share of the time until then.
    private const double Aftermath = 0.25;

    /// <summary>Samples a motion.</summary>
    /// <param name="motion">The motion.</param>
    /// <param name="samples">Evenly spaced instants, two or more, from release of the weights.</param>
    /// <param name="until">The last instant; a quarter past let-go if left out.</param>
    public static History Of(PlanarMotion motion, int samples, Duration? until)
    {
        List<(double, string)> events = [(motion.PeakTension.Time.Seconds, "peak tension")];
        if (motion.LetGoPhase == CordPhase.Hinging)
        {
            events.Add((motion.UnwindTime.Seconds, "fully unwound"));
        }

        events.Add((motion.LetGoTime.Seconds, "let go"));
        (string Key, Func<PlanarState, double> Of)[] columns = [.. Columns(motion)];
        IReadOnlyList<(double Time, string Event)> instants = History.Instants(samples, until?.Seconds ?? (motion.LetGoTime.Seconds * (1 + Aftermath)), events);
        return new History(
            [.. columns.Select(c => c.Key)],
            History.RowsOf(instants, motion.History, (state, happening) => new HistoryRow([.. columns.Select(c => c.Of(state))], KeyDescription.Phrase(state.Phase.ToString()), happening)))
        { Count = instants.Count };
    }

    private static List<(string Key, Func<PlanarState, double> Of)> Columns(PlanarMotion motion)
    {
        List<(string, Func<PlanarState, double>)> columns =
        [
            ("time_s", s => s.Time.Seconds),
            ("spin_rad_s", s => s.Spin.RadiansPerSecond),
            ("hub_angle_rad", s => s.HubAngle.Radians),
            ("unwound_length_m", s => s.FreeLength.Meters),
            ("cord_angle_rad", s => s.CordAngle.Radians),
            ("cord_tension_n", s => s.CordTension.Newtons),
            .. motion is SpringCordMotion ? OnSprings(s => (SpringCordState)s) : Inextensible(s => (DespinState)s),
            ("angular_momentum_kg_m2_s", s => s.AngularMomentum.KilogramSquareMetersPerSecond),
        ];
        for (int i = 0; i < motion.Design.WeightCount; i++)
        {
            int weight = i;
            string number = (i + 1).ToString(CultureInfo.InvariantCulture);
            columns.Add(($"weight_{number}_x_m", s => s.WeightPosition(weight).X.Meters));
            columns.Add(($"weight_{number}_y_m", s => s.WeightPosition(weight).Y.Meters));
        }

        return columns;
    }

    private static List<(string Key, Func<PlanarState, double> Of)> Inextensible(Func<PlanarState, DespinState> of) =>
    [
        ("cord_tension_at_hub_n", s => of(s).CordTensionAtHub.Newtons),
        ("weight_speed_m_s", s => s.WeightSpeed.MetersPerSecond),
        ("hub_energy_j", s => of(s).Energy.HubRotation.Joules),
        ("weights_energy_j", s => of(s).Energy.Weights.Joules),
        ("cords_energy_j", s => of(s).Energy.Cords.Joules),
    ];

    private static List<(string Key, Func<PlanarState, double> Of)> OnSprings(Func<PlanarState, SpringCordState> of) =>
    [
        ("cord_stretch_m", s => s.Stretch.Meters),
        ("weight_speed_m_s", s => s.WeightSpeed.MetersPerSecond),
        ("hub_energy_j", s => of(s).Energy.HubRotation.Joules),
        ("weights_energy_j", s => of(s).Energy.Weights.Joules),
        ("stretch_energy_j", s => of(s).Energy.Elastic.Joules),
        ("damped_energy_j", s => of(s).DampedEnergy.Joules),
    ];
}
