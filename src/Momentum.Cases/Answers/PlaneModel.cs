using Momentum.Cases.Sections;
using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The cases of a spread in the plane, all weights and cords alike: for a body of which only the spin inertia is known.</summary>
internal sealed class PlaneModel(PlanarMotion nominal, SpinningBody body, CaseInputs inputs) : CaseModel(inputs)
{
    public override string Name => "in the plane";

    public override bool IsSpatial => false;

    public override DeployedCase Run(DrawnCase drawn, long number)
    {
        Case given = drawn.Case;
        DespinSection despin = given.Despin;
        var hub = new DespinHub(DrawnBody.SpinInertia(given, body.SpinAxis), despin.HubRadius.Value, given.Spin.Rate.Value);
        Mass mass = despin.WeightMass?.Value ?? nominal.Design.WeightMass;
        Length length = despin.CordLength?.Value ?? nominal.Design.CordLength;
        try
        {
            LetGo? letGo = LetGoOf(despin, length / hub.Radius);
            if (letGo is null)
            {
                return new DeployedCase { Number = number, Outcome = DeploymentOutcome.WrappedBack, Reason = "a cord reaches the other tangent before it lets go" };
            }

            PlanarMotion motion = nominal.Design is SpringCordDesign springs
                ? hub.CarryingOnSprings(mass, length, ForcePerLength.FromNewtonsPerMeter(springs.Stiffness.Newtons / length.Meters), letGo, despin.Cord?.Damping?.Value.DecimalFractions ?? 0, despin.Weights).Deploy()
                : hub.Carrying(mass, length, letGo, despin.Cord?.LineDensity?.Value, despin.Weights).Deploy();
            RotationalSpeed spin = motion.FinalSpin;
            if (motion is DespinMotion cords && despin.SecondWeightDelay is { } delay && delay.Value.Seconds != 0)
            {
                spin = cords.WithOneWeightLate(Duration.FromSeconds(Math.Abs(delay.Value.Seconds)), given.Vehicle.Mass!.Value).FinalSpin;
            }

            Force peak = motion.PeakTension.Tension;
            return new DeployedCase
            {
                Number = number,
                Outcome = DeploymentOutcome.LetGo,
                FinalSpin = spin,
                LargestSpin = RotationalSpeed.FromRadiansPerSecond(Math.Abs(spin.RadiansPerSecond)),
                PeakTension = peak,
                BreakingLoadRatio = despin.Cord?.BreakingLoad is { } load ? load.Value / peak : null,
                Reason = "",
            };
        }
        catch (ComputationRefusedException refusal)
        {
            return new DeployedCase { Number = number, Outcome = DeploymentOutcome.NotLetGo, Reason = refusal.Message };
        }
    }

    public override IEnumerable<DeployedCase> Run(ulong seed, long first, long count, CancellationToken cancellation) =>
        Ordered(first, count, number => Inputs.Draw(seed, number), cancellation);

    public override IEnumerable<DeployedCase> Run(long count, Func<long, DrawnCase> draw, CancellationToken cancellation) =>
        Ordered(0, count, draw, cancellation);

    public override bool Differ(DrawnCase one, DrawnCase other)
    {
        return Figures(one) != Figures(other) || BreakingLoad(one) != BreakingLoad(other);

        DeployedCase Figures(DrawnCase drawn) => Run(drawn, 0);

        static double? BreakingLoad(DrawnCase drawn) => drawn.Case.Despin.Cord?.BreakingLoad?.Value.Newtons;
    }

    public override MassProperties<Body>? Body(Case drawn) => null;

    private IEnumerable<DeployedCase> Ordered(long first, long count, Func<long, DrawnCase> draw, CancellationToken cancellation)
    {
        return NumberedCases.Run(first, count, Numbered, 0, cancellation);

        DeployedCase Numbered(long number)
        {
            try
            {
                return Run(draw(number), number);
            }
            catch (ArgumentException refusal)
            {
                return new DeployedCase { Number = number, Outcome = DeploymentOutcome.NotPhysical, Reason = refusal.Message };
            }
        }
    }

    /// <summary>The rule as drawn; null past the other tangent.</summary>
    private static LetGo? LetGoOf(DespinSection despin, double wound)
    {
        if (despin.LetGo.Rate is { } rate)
        {
            return LetGo.AtSpin(rate.Value);
        }

        double angle = Math.Max(-wound, (Solver.LetGoAngleOf(despin.LetGo) + (despin.LetGoError?.Value ?? Angle.Zero)).Radians);
        return angle > Math.PI ? null : LetGo.AtCordAngle(Angle.FromRadians(angle));
    }
}
