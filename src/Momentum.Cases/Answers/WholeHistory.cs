using System.Globalization;
using Momentum.Cases.Keys;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The whole motion against time, in three dimensions.</summary>
internal static class WholeHistory
{
    // Nothing happens to a reader at these: a piece of cord is the computation's own, and the end is the last row.
    private static readonly DeploymentEventKind[] _unnamed = [DeploymentEventKind.CordPiecePeeled, DeploymentEventKind.End];

    /// <summary>Samples a motion.</summary>
    /// <param name="whole">The motion.</param>
    /// <param name="samples">Evenly spaced instants, two or more, from release of the weights.</param>
    /// <param name="until">The last instant; the end of what was computed if left out. Later ones are computed anew.</param>
    /// <param name="cancellation">Ends the computation.</param>
    /// <exception cref="ComputationRefusedException">Until then the motion cannot be trusted.</exception>
    public static History Of(WholeMotion whole, int samples, Duration? until, CancellationToken cancellation)
    {
        DeploymentResult result = until > whole.Result.End ? (whole.Result.Deployment with { Until = until.Value }).Deploy(cancellation) : whole.Result;
        double last = Math.Min(until?.Seconds ?? double.PositiveInfinity, result.End.Seconds);
        IEnumerable<(double, string)> events = result.Events
            .Where(e => !_unnamed.Contains(e.Kind))
            .Select(e => (e.Time.Seconds, KeyDescription.SpellingOf(e.Kind.ToString()).Replace('_', ' ') + (e.Cord is { } cord ? FormattableString.Invariant($" {cord + 1}") : "")));
        IReadOnlyList<(double Time, string Event)> instants = History.Instants(samples, last, events);
        (string Key, Func<DeploymentState, double> Of)[] columns = [.. Columns(result.Deployment.Cords.Count)];
        return new History(
            [.. columns.Select(c => c.Key)],
            History.RowsOf(instants, result.History, (state, happening) => new HistoryRow([.. columns.Select(c => c.Of(state))], Phase(state), happening)))
        { Count = instants.Count };
    }

    private static List<(string Key, Func<DeploymentState, double> Of)> Columns(int cords)
    {
        List<(string, Func<DeploymentState, double>)> columns =
        [
            ("time_s", s => s.Time.Seconds),
            ("spin_rad_s", s => s.Spin.RadiansPerSecond),
            ("transverse_rate_rad_s", s => s.TransverseRate.RadiansPerSecond),
            ("nutation_rad", s => s.NutationAngle.Radians),
            ("rate_x_rad_s", s => s.Rates.X.RadiansPerSecond),
            ("rate_y_rad_s", s => s.Rates.Y.RadiansPerSecond),
            ("rate_z_rad_s", s => s.Rates.Z.RadiansPerSecond),
            ("attitude_x", s => s.Attitude.X),
            ("attitude_y", s => s.Attitude.Y),
            ("attitude_z", s => s.Attitude.Z),
            ("attitude_w", s => s.Attitude.W),
            ("origin_x_m", s => s.Origin.X.Meters),
            ("origin_y_m", s => s.Origin.Y.Meters),
            ("origin_z_m", s => s.Origin.Z.Meters),
            ("body_angular_momentum_x_kg_m2_s", s => s.HubAngularMomentum.X.KilogramSquareMetersPerSecond),
            ("body_angular_momentum_y_kg_m2_s", s => s.HubAngularMomentum.Y.KilogramSquareMetersPerSecond),
            ("body_angular_momentum_z_kg_m2_s", s => s.HubAngularMomentum.Z.KilogramSquareMetersPerSecond),
            ("energy_j", s => s.Energy.Total.Joules),
        ];
        for (int i = 0; i < cords; i++)
        {
            int cord = i;
            string number = (i + 1).ToString(CultureInfo.InvariantCulture);
            columns.AddRange(
            [
                ($"cord_{number}_tension_n", s => s.Cords[cord].Tension.Newtons),
                ($"cord_{number}_free_length_m", s => s.Cords[cord].FreeLength.Meters),
                ($"cord_{number}_angle_rad", s => s.Cords[cord].CordAngle.Radians),
                ($"cord_{number}_out_of_plane_rad", s => s.Cords[cord].OutOfPlane.Radians),
                ($"weight_{number}_x_m", s => s.Cords[cord].Weight.X.Meters),
                ($"weight_{number}_y_m", s => s.Cords[cord].Weight.Y.Meters),
                ($"weight_{number}_z_m", s => s.Cords[cord].Weight.Z.Meters),
                ($"weight_{number}_speed_m_s", s => s.Cords[cord].WeightVelocity.Magnitude.MetersPerSecond),
            ]);
        }

        return columns;
    }

    /// <summary>Of the cord that is furthest behind.</summary>
    private static string Phase(DeploymentState state) => KeyDescription.Phrase(state.Cords.Min(c => c.Phase).ToString());
}
