using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The motion of a planar de-spin by numerical integration of Lagrange's equations, as a check of the closed form.</summary>
/// <remarks>
/// Made by <see cref="DespinDesign.Integrate"/>. It uses neither the conserved quantities nor the closed form; full unwinding and
/// let-go are located as events. Immutable, so safe to share between threads.
/// </remarks>
public sealed class IntegratedDespin
{
    internal IntegratedDespin(DespinDesign design, double relativeTolerance, CancellationToken cancellation)
    {
        Design = design;
        PlanarCords cords = design.Cords;
        double initial = design.Hub.Spin.ToSi();
        double? angle = (design.LetGo as LetGo.CordAngleRule)?.CordAngle.Radians;
        var events = new PlanarCordEvents
        {
            Place = 2,
            Coordinate = 0,
            Spin = design.LetGo is LetGo.SpinRule { Spin: var spin } ? spin.ToSi() / initial : double.NegativeInfinity,
        };

        var integrator = new OdeIntegrator<PlanarCordEquations, PlanarCordEvents, DormandPrince853>(
            new PlanarCordEquations(cords), events, OdeTolerances.Of(relativeTolerance, relativeTolerance / 100));

        // No phase takes longer than the slowest cord: unwinding takes -Start, and a hinged cord swings no slower than at
        // the tangent, half a turn at least.
        var states = new List<DespinState>();
        integrator.Start(0, [0, 1, cords.Start, 2]);
        Record(CordPhase.Unwinding);
        RunPhase(CordPhase.Unwinding);
        UnwindTime = Duration.FromSeconds(integrator.Time / initial);
        bool fullyUnwound = integrator.Events[0].Index == 0;
        if (fullyUnwound && angle is not 0.0)
        {
            integrator.System.Hinging = true;
            integrator.EventFunctions.Coordinate = angle ?? Math.PI;
            integrator.Start(integrator.Time, [integrator.State[0], integrator.State[1], 0, integrator.State[3]]);
            RunPhase(CordPhase.Hinging);
            if (angle is null && integrator.Events[0].Index == 0)
            {
                throw new ComputationRefusedException(
                    $"The cords are to let go at {Quoted.Spin(events.Spin * initial)}, which is not reached before they wrap the hub the other " +
                    "way. Give longer cords, heavier weights, or a higher let-go spin.");
            }
        }

        Steps = states;
        Ledger = design.Close(states, Momentum.Ledger.Allowed(relativeTolerance));

        void RunPhase(CordPhase phase)
        {
            double end = integrator.Time + Math.Max(-cords.Start, Math.PI) * 1.01;
            StepResult result;
            do
            {
                cancellation.ThrowIfCancellationRequested();
                result = integrator.Step(end);
                Record(phase);
            }
            while (result == StepResult.StepTaken);

            if (result != StepResult.EventReached)
            {
                throw new ComputationRefusedException(
                    "The integrated motion does not reach the end of unwinding or let-go in time; tighten the tolerance.");
            }
        }

        void Record(CordPhase phase) => states.Add(new DespinState(
            design,
            phase,
            integrator.Time / initial,
            0,
            integrator.State[2],
            integrator.State[0],
            integrator.State[1] * initial,
            integrator.State[3] * initial));
    }

    /// <summary>The design that moves.</summary>
    public DespinDesign Design { get; }

    /// <summary>How long the cords unwind: until fully unwound, or until let go before that.</summary>
    public Duration UnwindTime { get; }

    /// <summary>Time from release of the weights to let-go of the cords.</summary>
    public Duration LetGoTime => Steps[^1].Time;

    /// <summary>Spin of the hub after let-go; negative if reversed.</summary>
    public RotationalSpeed FinalSpin => Steps[^1].Spin;

    /// <summary>How far the hub turns from release of the weights to let-go.</summary>
    public Angle HubTurn => Steps[^1].HubAngle;

    /// <summary>Cord angle from tangent at let-go; zero if let go while unwinding.</summary>
    public Angle LetGoCordAngle => Steps[^1].CordAngle;

    /// <summary>The states at the ends of the integrator's steps, from release of the weights to let-go.</summary>
    public IReadOnlyList<DespinState> Steps { get; }

    /// <summary>How well angular momentum and energy close.</summary>
    public DespinLedger Ledger { get; }
}
