using System.Globalization;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The limit of vanishing free length, where a node leaves the drum and the unwound angle's equation is 0/0. There the node is free
/// to leave along the drum's radius and along the axis; with the accelerations a_r and a_a relative to the hub, its involute needs
/// R φ'² = a_r, and its angle out of the plane grows as β = a_a t/(2 R φ'). Every node that starts now is given 1e-8 rad of the
/// angle that grows faster, everything else the short time that this takes; both are exact to the square of that angle. Holds its
/// memory.
/// </summary>
internal sealed class WindingStart(Mechanism mechanism)
{
    // What the faster of a starting node's two angles is given, in radians: the limit laws used there are exact to its square.
    private const double StartAngle = 1e-8;

    // What a start may miss of the velocity of another lump that is near the drum, in speeds at which drum friction fades.
    private const double Missed = 1e-9;

    // A winding that ends within this angle of a start, in radians, is ended before it: shortly after a start the numbers
    // of the starting node have few digits, which an end would pass on to the rest.
    private const double WaitAngle = 1e-6;

    // A wobbling hub may leave a cord a tension a little below zero at the very start. Down to this fraction of the
    // weight's centrifugal force the cord would be slack for the first milliradian only, by nanometres: it is held straight.
    private const double NegligibleSlack = 1e-3;

    private readonly double[] _derivatives = new double[mechanism.Dimension];
    private readonly double[] _midpoint = new double[mechanism.Dimension];
    private readonly double[] _waiting = new double[mechanism.Dimension];

    /// <summary>Forgets what a node waited for in a run before.</summary>
    public void Reset() => Array.Clear(_waiting);

    /// <summary>Lets the nodes start that are about to.</summary>
    /// <param name="state">The state, moved on.</param>
    /// <param name="slack">Receives for each link whether it starts without tension.</param>
    /// <param name="ending">
    /// The link, or −1, that reaches its end within about that time. Then the nodes wait on the drum until just there: end
    /// its winding and call again, and they are given for what they waited.
    /// </param>
    /// <returns>The time that passed; zero if no node starts.</returns>
    /// <exception cref="DeploymentRefusedException">A node is not thrown outward.</exception>
    public double Start(Span<double> state, Span<bool> slack, out int ending)
    {
        ending = -1;
        double fastest = Settle(state, slack);
        if (fastest == 0)
        {
            return 0;
        }

        double time = WaitAngle / fastest;
        ReadOnlySpan<Link> links = mechanism.Links;
        for (int i = 0; i < links.Length; i++)
        {
            ref readonly Link link = ref links[i];
            double unwinding = link.Motion.Unwinding;
            double end = link.Phase.Winding.End;
            if (link.IsOnDrum && unwinding > 0 && state[link.Offset] + (unwinding * time) >= end && !link.Starts(state))
            {
                time = Math.Max(0, (end - state[link.Offset]) / unwinding);
                ending = i;
            }
        }

        if (ending >= 0)
        {
            Wait(time, state);
            state[links[ending].Offset] = links[ending].Phase.Winding.End;
            return time;
        }

        return Move(StartAngle / fastest, state);
    }

    /// <summary>
    /// The time in which the other links on drums move evenly. A lump that comes back to the drum, or was jolted off it, does not
    /// for long: its free length goes with the root of the time.
    /// </summary>
    private double TimeOfOthers(ReadOnlySpan<double> state)
    {
        double time = double.PositiveInfinity;
        foreach (ref readonly Link link in mechanism.Links)
        {
            double outward = state[link.Offset + 3];
            if (link.IsOnDrum && !link.Starts(state) && outward != 0 && link.Motion.Free > 0)
            {
                double lengthening = mechanism.CordOf(link.Cord).Radius * link.Motion.Unwinding / link.Motion.Free;
                double uneven = Math.Abs(lengthening * (_derivatives[link.Offset + 3] - (lengthening * outward)));
                time = Math.Min(time, Math.Sqrt(Missed * mechanism.CordOf(link.Cord).FrictionSpeed / uneven));
            }
        }

        return time;
    }

    /// <summary>Finds which of the starting nodes start without tension.</summary>
    /// <returns>How fast the fastest of their angles grows, rad/s; zero if no node starts.</returns>
    private double Settle(ReadOnlySpan<double> state, Span<bool> slack)
    {
        slack.Clear();
        double fastest = 0;
        bool loosened = true;
        while (loosened)
        {
            mechanism.Evaluate(state);
            loosened = false;
            fastest = 0;
            Span<Link> links = mechanism.Links;
            for (int i = 0; i < links.Length; i++)
            {
                ref Link link = ref links[i];
                if (!link.Starts(state))
                {
                    continue;
                }

                double outward = link.Motion.Acceleration.Dot(link.Motion.Radial);
                if (!(outward > 0))
                {
                    throw NotThrownOutward(link, outward);
                }

                // Each link can be loosened once, so that this ends.
                if (link.IsConstrained && link.Motion.Tension < -NegligibleSlack * link.Mass * outward)
                {
                    link.Phase.Chart = Chart.FreeDrum;
                    link.Phase.Pulls = false;
                    slack[i] = true;
                    loosened = true;
                }

                fastest = Math.Max(fastest, Rate(link, outward));
            }
        }

        return fastest;
    }

    private static DeploymentRefusedException NotThrownOutward(in Link link, double outward)
    {
        FormattableString why = link.WeightShare > 0
            ? (FormattableString)$"The weight of cord {link.Cord + 1} is not thrown outward when it is set free: its acceleration away from the drum is {outward:G4} m/s². Spin the hub, or place the weight further from the spin axis."
            : $"A joint of heavy cord {link.Cord + 1} is pressed onto the drum as it should leave it, by {-outward:G4} m/s²: the cord's pull presses it there, or the hub turns too slowly to throw it off, and the cord would wind up again. Let go before that, or take a lighter cord or fewer segments.";
        return new DeploymentRefusedException(why.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>
    /// How fast the angles of a node that starts grow, rad/s. A light lump under a cord that pulls out of the drum's plane goes
    /// out of it hundreds of times faster than along it.
    /// </summary>
    private double Rate(in Link link, double outward)
    {
        double radius = mechanism.CordOf(link.Cord).Radius;
        double unwinding = Math.Sqrt(outward / radius);
        return link.Phase.Chart == Chart.Groove
            ? Math.Max(unwinding, Math.Abs(link.Motion.Acceleration.Dot(mechanism.Hub.Axis)) / (2 * radius * unwinding))
            : unwinding;
    }

    /// <summary>A short step of everything, and the start of the nodes.</summary>
    /// <returns>The time that it took: what was asked for, or less.</returns>
    private double Move(double most, Span<double> state)
    {
        mechanism.Derivatives(state, _derivatives);
        double time = Math.Min(most, TimeOfOthers(state));
        foreach (ref readonly Link link in mechanism.Links)
        {
            if (link.Starts(state))
            {
                StartingRates(link, _derivatives.AsSpan(link.Offset, Mechanism.Slots));
            }
        }

        for (int i = 0; i < state.Length; i++)
        {
            state[i] += _waiting[i] + (time * _derivatives[i]);
        }

        Array.Clear(_waiting);
        return time;
    }

    /// <summary>What of a node that starts grows with time, and how fast.</summary>
    private void StartingRates(in Link link, Span<double> rate)
    {
        double radius = mechanism.CordOf(link.Cord).Radius;
        Vec acceleration = link.Motion.Acceleration;
        double unwinding = Math.Sqrt(acceleration.Dot(link.Motion.Radial) / radius);
        double axial = acceleration.Dot(mechanism.Hub.Axis);
        rate.Clear();
        rate[0] = unwinding;
        rate[3] = radius * unwinding * unwinding;
        if (link.Phase.Chart == Chart.FreeDrum)
        {
            rate[1] = radius * unwinding;
            rate[4] = acceleration.Dot(link.Motion.Trailing);
            rate[5] = axial;
        }
        else
        {
            rate[1] = link.Phase.Chart == Chart.SmoothDrum ? 0 : axial / (2 * radius * unwinding);
            rate[4] = axial;
        }
    }

    /// <summary>A midpoint step of everything but the nodes about to start, whose share is kept until they do.</summary>
    private void Wait(double time, Span<double> state)
    {
        mechanism.Derivatives(state, _derivatives);
        ClearStarting(state);
        for (int i = 0; i < state.Length; i++)
        {
            _midpoint[i] = state[i] + (0.5 * time * _derivatives[i]);
        }

        mechanism.Derivatives(_midpoint, _derivatives);
        foreach (ref readonly Link link in mechanism.Links)
        {
            if (!link.Starts(state))
            {
                continue;
            }

            Span<double> share = _derivatives.AsSpan(link.Offset, Mechanism.Slots);
            StartingRates(link, share);
            for (int k = 0; k < share.Length; k++)
            {
                _waiting[link.Offset + k] += time * share[k];
            }
        }

        ClearStarting(state);
        for (int i = 0; i < state.Length; i++)
        {
            state[i] += time * _derivatives[i];
        }
    }

    private void ClearStarting(ReadOnlySpan<double> state)
    {
        foreach (ref readonly Link link in mechanism.Links)
        {
            if (link.Starts(state))
            {
                _derivatives.AsSpan(link.Offset, Mechanism.Slots).Clear();
            }
        }
    }
}
