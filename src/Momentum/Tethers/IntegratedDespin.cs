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
        design.RefuseMetAtStart();
        LetGoRule rule = design.LetGo.Si.In(initial);
        var integrator = new OdeIntegrator<PlanarCordEquations, PlanarCordEvents, DormandPrince853>(
            new PlanarCordEquations(cords), default, OdeTolerances.Of(relativeTolerance, relativeTolerance / 100));

        // No phase takes longer than the slowest cord: unwinding takes -Start, and a hinged cord swings no slower than at
        // the tangent, half a turn at least.
        var states = new List<DespinState>();
        CordPhase phase = CordPhase.Unwinding;
        integrator.Start(0, [0, 1, cords.Start, 2]);
        Record();
        while (true)
        {
            int ended = RunPhase();
            bool unwound = ended == PlanarCordEvents.End && phase == CordPhase.Unwinding;
            UnwindTime = phase == CordPhase.Unwinding ? Duration.FromSeconds(integrator.Time / initial) : UnwindTime;
            if (ended == PlanarCordEvents.LetGo || IsMet())
            {
                if (rule.IsImmediate)
                {
                    break;
                }

                rule = rule.After(integrator.Time);
            }
            else if (!unwound)
            {
                throw new ComputationRefusedException(
                    $"The cords are to let go at {design.LetGo}, which is not reached before they wrap the hub the other " +
                    "way. Give longer cords, heavier weights, or a rule that is met earlier.");
            }

            double[] state = [.. integrator.State];
            if (unwound)
            {
                phase = CordPhase.Hinging;
                integrator.System.Hinging = true;
                state[PlanarCordEquations.Coordinate] = 0;
            }

            integrator.Start(integrator.Time, state);
        }

        Steps = states;
        Ledger = design.Close(states, Momentum.Ledger.Allowed(relativeTolerance));

        // At either tangent the rule may be met at this very moment.
        bool IsMet() => rule.Condition(
            integrator.Time, integrator.State[PlanarCordEquations.Spin], phase == CordPhase.Unwinding ? 0 : Math.PI) >= 0;

        int RunPhase()
        {
            integrator.EventFunctions.Coordinate = phase == CordPhase.Unwinding ? 0 : Math.PI;
            integrator.EventFunctions.Awaited = rule;
            double end = integrator.Time + Math.Max(-cords.Start, Math.PI) * 1.01;
            StepResult result;
            do
            {
                cancellation.ThrowIfCancellationRequested();
                result = integrator.Step(end);
                Record();
            }
            while (result == StepResult.StepTaken);

            if (result != StepResult.EventReached)
            {
                throw new ComputationRefusedException(
                    "The integrated motion does not reach the end of unwinding or let-go in time; tighten the tolerance.");
            }

            return integrator.Events[0].Index;
        }

        void Record() => states.Add(new DespinState(
            design,
            phase,
            integrator.Time / initial,
            0,
            integrator.State[PlanarCordEquations.Coordinate],
            integrator.State[PlanarCordEquations.HubAngle],
            integrator.State[PlanarCordEquations.Spin] * initial,
            integrator.State[PlanarCordEquations.Turning] * initial));
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
    public DeploymentLedger Ledger { get; }
}
