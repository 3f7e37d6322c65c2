using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>Follows the one cord that lets go late. One serves many runs without allocating; not thread-safe.</summary>
internal sealed class LateCord
{
    private readonly OdeIntegrator<LateCordEquations, LateCordEvents, DormandPrince853> _integrator;

    internal LateCord(double relativeTolerance)
    {
        _integrator = new OdeIntegrator<LateCordEquations, LateCordEvents, DormandPrince853>(
            default,
            default,
            OdeTolerances.Of(relativeTolerance, relativeTolerance));
    }

    /// <summary>Spin of the hub at the late let-go, over initial spin.</summary>
    internal double Spin { get; private set; }

    /// <summary>Coordinate of the late cord at its let-go.</summary>
    internal double Coordinate { get; private set; }

    /// <summary>Rate at which the late cord turns in inertial space at its let-go, over initial spin.</summary>
    internal double Turning { get; private set; }

    /// <summary>Hub turn (rad) between the two let-goes.</summary>
    internal double Turn { get; private set; }

    /// <summary>Velocity (m) of the hub's centre of mass over initial spin after the late let-go, along the radius through the cord's root at the first let-go.</summary>
    internal double RadialDrift { get; private set; }

    /// <summary>The same across that radius, in the sense of the initial spin.</summary>
    internal double TangentialDrift { get; private set; }

    /// <summary>Departure of angular momentum and energy from their values at the first let-go, relative.</summary>
    internal double Closure { get; private set; }

    /// <summary>Runs from the first let-go.</summary>
    /// <param name="cords">The symmetric motion before it.</param>
    /// <param name="weights">Number of weights; all but one let go.</param>
    /// <param name="hubMass">Mass of the hub without weights and cords.</param>
    /// <param name="from">Coordinate of the first let-go.</param>
    /// <param name="delay">How much later the last one lets go, in 1/w0.</param>
    /// <param name="cancellation">Ends the run early.</param>
    /// <returns>False if the late cord reaches the other tangent first and would wrap the hub.</returns>
    internal bool Run(in PlanarCords cords, int weights, double hubMass, double from, double delay, CancellationToken cancellation = default)
    {
        double density = cords.Density / weights;
        double free = cords.FreeLength(from);
        double left = (weights - 1) * density * (cords.Length - free);
        ref LateCordEquations system = ref _integrator.System;
        system = new LateCordEquations
        {
            Hub = cords.Hub + (left * cords.Radius * cords.Radius),
            HubMass = hubMass + left,
            Weight = cords.Weights / weights,
            Density = density,
            Radius = cords.Radius,
            Length = cords.Length,
            Hinging = from >= 0,
        };
        double spin = cords.Spin(from);
        double turning = cords.Turning(from);
        system.Begin(from, spin, turning);
        system.MomentumOfCord(from, spin, turning, out double radial, out double tangential);
        double total = hubMass + left + (cords.Weights / weights) + (density * cords.Length);
        double momentum = system.Momentum;
        double energy = system.Energy;

        _integrator.EventFunctions.Coordinate = system.Hinging ? Math.PI : 0;
        ReadOnlySpan<double> state = stackalloc double[] { from, turning - spin, 0 };
        _integrator.Start(0, state);
        StepResult result = _integrator.Run(delay, cancellation);
        if (result == StepResult.EventReached && !system.Hinging)
        {
            ReadOnlySpan<double> hinged = stackalloc double[] { 0, _integrator.State[1], _integrator.State[2] };
            system.Hinging = true;
            _integrator.EventFunctions.Coordinate = Math.PI;
            _integrator.Start(_integrator.Time, hinged);
            result = _integrator.Run(delay, cancellation);
        }

        Coordinate = _integrator.State[0];
        Turn = _integrator.State[2];
        Spin = system.Spin(Coordinate, _integrator.State[1]);
        Turning = Spin + _integrator.State[1];
        if (result == StepResult.EventReached)
        {
            return false;
        }

        // What the cord takes away of the linear momentum that it had at the first let-go stays with nobody else but the hub.
        system.MomentumOfCord(Coordinate, Spin, Turning, out double lastRadial, out double lastTangential);
        (double sine, double cosine) = Math.SinCos(Turn + Math.Min(Coordinate, 0) - Math.Min(from, 0));
        RadialDrift = (radial - ((lastRadial * cosine) - (lastTangential * sine))) / total;
        TangentialDrift = (tangential - ((lastRadial * sine) + (lastTangential * cosine))) / total;

        // Spin was taken from the momentum, so the energy is what can have drifted.
        system.Begin(Coordinate, Spin, Turning);
        Closure = Math.Max(Math.Abs((system.Momentum - momentum) / momentum), Math.Abs((system.Energy - energy) / energy));
        return true;
    }
}
