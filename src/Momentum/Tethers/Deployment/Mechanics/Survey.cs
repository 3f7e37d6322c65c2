using Momentum.Frames;
using Momentum.Motion;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>Watches a propagation go by, and keeps the largest of what the result reports.</summary>
internal sealed class Survey(int cords)
{
    private const int Before = 0;
    private const int During = 1;
    private const int After = 2;

    // Unwound angle, in radians, below which the tension has few digits: it comes from the difference of lengths that
    // are almost nothing, and does not peak there.
    private const double BarelyFree = 1e-3;

    private readonly Peak[] _peaks = new Peak[cords];
    private readonly Stretch[] _stretches = new Stretch[3];
    private Vec _first;
    private readonly Top[] _tops = new Top[cords];
    private bool _begun;

    /// <summary>The largest tension seen of each cord, and the times between which the true peak lies.</summary>
    public IEnumerable<Peak> Peaks => _peaks;

    /// <summary>
    /// The largest tension of all cords, at the tops of parabolas through three looks: what a run without a recording can
    /// know of the peak between them.
    /// </summary>
    public double PeakTension
    {
        get
        {
            double peak = 0;
            for (int cord = 0; cord < cords; cord++)
            {
                peak = Math.Max(peak, PeakTensionOf(cord));
            }

            return peak;
        }
    }

    /// <summary>The largest tension of one cord, likewise.</summary>
    public double PeakTensionOf(int cord) => Math.Max(_peaks[cord].Tension, _tops[cord].Highest);

    /// <summary>An event may have made the tensions jump: no parabola is laid across it.</summary>
    public void BeginSegment()
    {
        for (int cord = 0; cord < cords; cord++)
        {
            _tops[cord].Looks = 0;
        }
    }

    /// <param name="time">s.</param>
    /// <param name="spacing">Time between looks, s.</param>
    /// <param name="state">The state at that time.</param>
    /// <param name="mechanism">Evaluated at that state.</param>
    public void Look(double time, double spacing, ReadOnlySpan<double> state, Mechanism mechanism)
    {
        Vec momentum = Weighing.HubMomentum(mechanism, state);
        if (!_begun)
        {
            _first = momentum;
            _begun = true;
        }

        int held = 0;
        int gone = 0;
        for (int cord = 0; cord < cords; cord++)
        {
            Chart chart = mechanism.Links[mechanism.OuterLink(cord)].Phase.Chart;
            held += chart == Chart.Held ? 1 : 0;
            gone += chart == Chart.Gone ? 1 : 0;
            int inner = mechanism.InnerLink(cord);
            if (inner >= 0 && mechanism.Links[inner].IsOnDrum && state[mechanism.Links[inner].Offset] < BarelyFree)
            {
                _tops[cord].Looks = 0;
                continue;
            }

            double tension = inner < 0 ? 0 : mechanism.Links[inner].Motion.Tension;
            _tops[cord].See(time, tension);
            if (tension > _peaks[cord].Tension)
            {
                _peaks[cord] = new Peak(tension, time, Math.Max(time - spacing, 0), time + spacing);
            }
        }

        ref Stretch stretch = ref _stretches[held == cords ? Before : gone == cords ? After : During];
        Vec omega = Vec.Read(state[Mechanism.Rates..]);
        stretch.Nutation = Math.Max(stretch.Nutation, Nutation(mechanism, state));
        stretch.Transverse = Math.Max(stretch.Transverse, omega.Cross(mechanism.Hub.Axis).Length);
        stretch.Spin = Math.Max(stretch.Spin, Math.Abs(omega.Dot(mechanism.Hub.Axis)));
        stretch.Momentum = momentum;
        stretch.Seen = true;
    }

    /// <summary>
    /// All cords are gone and nothing acts on the hub any more: what its motion reaches over all time to come takes the place
    /// of what was seen of it.
    /// </summary>
    /// <param name="state">A state after the last let-go.</param>
    /// <param name="mechanism">The hub alone.</param>
    public void GoOnForEver(ReadOnlySpan<double> state, Mechanism mechanism)
    {
        FreeRotation rotation = new(mechanism.Hub.Inertia, Vec.Read(state[Mechanism.Rates..]), Quaternion.Identity);
        ref Stretch after = ref _stretches[After];
        rotation.Extremes(mechanism.Hub.Axis, out after.Nutation, out after.Transverse, out after.Spin);
        after.Momentum = Weighing.HubMomentum(mechanism, state);
        after.Seen = true;
    }

    public (Wobble Before, Wobble During, Wobble After) Wobbles()
    {
        Wobble before = Of(_stretches[Before]);
        Wobble during = _stretches[During].Seen ? Of(_stretches[During]) : before;
        return (before, during, _stretches[After].Seen ? Of(_stretches[After]) : during);
    }

    /// <summary>Angle in radians between the hub's angular momentum about its centre of mass and the nearer end of the axis.</summary>
    public static double Nutation(Mechanism mechanism, ReadOnlySpan<double> state)
    {
        Vec momentum = Weighing.HubMomentum(mechanism, state);
        Vec axis = new Turn(state.Slice(Mechanism.Attitude, 4)).ToInertial(mechanism.Hub.Axis);
        return Math.Atan2(momentum.Cross(axis).Length, Math.Abs(momentum.Dot(axis)));
    }

    private Wobble Of(in Stretch stretch) => new(
        Angle.FromRadians(stretch.Nutation),
        RotationalSpeed.FromRadiansPerSecond(stretch.Transverse),
        RotationalSpeed.FromRadiansPerSecond(stretch.Spin),
        Vector<AngularMomentum, Inertial>.FromSi(stretch.Momentum),
        Angle.FromRadians(stretch.Momentum.AngleTo(_first)));

    internal readonly record struct Peak(double Tension, double Time, double From, double Until);

    /// <summary>The tops of one cord's tension between looks.</summary>
    private struct Top
    {
        public int Looks;
        public double Highest;
        private double _firstTime;
        private double _first;
        private double _middleTime;
        private double _middle;

        public void See(double time, double tension)
        {
            if (Looks >= 2 && _middle >= _first && _middle >= tension)
            {
                // Vertex of the parabola through three points, by divided differences.
                double rise = (_middle - _first) / (_middleTime - _firstTime);
                double fall = (tension - _middle) / (time - _middleTime);
                double curvature = (fall - rise) / (time - _firstTime);
                if (curvature < 0)
                {
                    double slope = rise + (curvature * (_middleTime - _firstTime));
                    Highest = Math.Max(Highest, _middle - (slope * slope / (4 * curvature)));
                }
            }

            (_firstTime, _first, _middleTime, _middle) = (_middleTime, _middle, time, tension);
            Looks++;
        }
    }

    private struct Stretch
    {
        public double Nutation;
        public double Transverse;
        public double Spin;
        public Vec Momentum;
        public bool Seen;
    }
}
