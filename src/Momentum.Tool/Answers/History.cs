using System.Globalization;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tool.Answers;

/// <summary>The motion against time: evenly spaced instants, and those where something happens.</summary>
internal sealed class History
{
    private History(IReadOnlyList<HistoryColumn> columns, IReadOnlyList<HistoryRow> rows)
    {
        Columns = columns;
        Rows = rows;
    }

    public IReadOnlyList<HistoryColumn> Columns { get; }

    public IReadOnlyList<HistoryRow> Rows { get; }

    /// <summary>Samples a motion.</summary>
    /// <param name="motion">The motion.</param>
    /// <param name="samples">Evenly spaced instants, two or more, from release of the weights.</param>
    /// <param name="until">The last instant; a quarter past let-go if left out.</param>
    public static History Of(DespinMotion motion, int samples, Duration? until)
    {
        double last = until?.Seconds ?? (motion.LetGoTime.Seconds * 1.25);
        var instants = new List<(double Time, string Event)>();
        for (int i = 0; i < samples; i++)
        {
            instants.Add((last * i / (samples - 1), ""));
        }

        Mark(motion.PeakTension.Time.Seconds, "peak tension");
        if (motion.LetGoPhase == DespinPhase.Hinging)
        {
            Mark(motion.UnwindTime.Seconds, "fully unwound");
        }

        Mark(motion.LetGoTime.Seconds, "let go");
        instants.Sort((a, b) => a.Time.CompareTo(b.Time));
        return new History(ColumnsFor(motion.Design.Weights), [.. instants.Select(i => new HistoryRow(motion.At(Duration.FromSeconds(i.Time)), i.Event))]);

        void Mark(double time, string name)
        {
            if (time > last)
            {
                return;
            }

            int same = instants.FindIndex(i => i.Time == time);
            if (same < 0)
            {
                instants.Add((time, name));
            }
            else
            {
                instants[same] = (time, instants[same].Event.Length == 0 ? name : $"{instants[same].Event}; {name}");
            }
        }
    }

    private static List<HistoryColumn> ColumnsFor(int weights)
    {
        List<HistoryColumn> columns =
        [
            new("time_s", s => s.Time.Seconds),
            new("spin_rad_s", s => s.Spin.RadiansPerSecond),
            new("hub_angle_rad", s => s.HubAngle.Radians),
            new("unwound_length_m", s => s.UnwoundLength.Meters),
            new("cord_angle_rad", s => s.CordAngle.Radians),
            new("cord_tension_n", s => s.CordTension.Newtons),
            new("cord_tension_at_hub_n", s => s.CordTensionAtHub.Newtons),
            new("weight_speed_m_s", s => s.WeightSpeed.MetersPerSecond),
            new("hub_energy_j", s => s.Energy.Hub.Joules),
            new("weights_energy_j", s => s.Energy.Weights.Joules),
            new("cords_energy_j", s => s.Energy.Cords.Joules),
            new("angular_momentum_kg_m2_s", s => s.AngularMomentum.KilogramSquareMetersPerSecond),
        ];
        for (int i = 0; i < weights; i++)
        {
            int weight = i;
            string number = (i + 1).ToString(CultureInfo.InvariantCulture);
            columns.Add(new($"weight_{number}_x_m", s => s.WeightPosition(weight).X.Meters));
            columns.Add(new($"weight_{number}_y_m", s => s.WeightPosition(weight).Y.Meters));
        }

        return columns;
    }
}
