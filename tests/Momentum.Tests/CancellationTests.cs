using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Motion;
using Momentum.Numerics;
using Momentum.Tests.Deployment;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests;

/// <summary>What computes for long is ended early by who asked for it.</summary>
public class CancellationTests
{
    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRevolutionsPerMinute(72));

    private static readonly DespinDesign _design = _hub.Carrying(Mass.FromGrams(620), Length.FromMeters(1.9), LetGo.Radial);

    private static readonly SpringCordDesign _springs = _hub.CarryingOnSprings(
        Mass.FromGrams(620), Length.FromMeters(1.9), ForcePerLength.FromNewtonsPerMeter(900), LetGo.Tangent, 0.2);

    public static TheoryData<string, Action<CancellationToken>> Computations => new()
    {
        { "deployment on springs", token => _springs.Deploy(token) },
        { "sensitivity on springs", token => _springs.Sensitivity(token) },
        { "the same without stretch", token => _springs.WithoutStretch(token) },
        { "sizing of springs", token => _hub.SizeSpringCord(Mass.FromGrams(620), RotationalSpeed.FromRevolutionsPerMinute(9), LetGo.Tangent, cancellation: token) },
        { "integrated de-spin", token => _design.Integrate(cancellation: token) },
        { "one weight late", token => _design.Deploy(token).WithOneWeightLate(Duration.FromMilliseconds(5), Mass.FromKilograms(150), token) },
        { "deployment in space", token => Invented.Deployment.Deploy(token) },
        { "causes of the final spin", token => Invented.Deployment.ExplainFinalSpin(token) },
        { "planar ensemble", token => new DespinDispersion(_design, new DespinUncertainty()).Run(cancellation: token) },
        { "planar sensitivity", token => new DespinDispersion(_springs, Uncertain).Sensitivity(token) },
        { "ensemble in space", token => new DeploymentDispersion(Invented.Deployment, new DespinUncertainty()).Run(cancellation: token) },
        { "forced motion", token => Forced().AdvanceTo(Duration.FromSeconds(1), token) },
        { "integration", token => Integrator().Run(1, token) },
    };

    private static DespinUncertainty Uncertain => new() { InitialSpin = Scatter.Normal(RotationalSpeed.FromRevolutionsPerMinute(1)) };

    [Theory]
    [MemberData(nameof(Computations))]
    public void A_computation_that_is_cancelled_ends(string name, Action<CancellationToken> computation)
    {
        Assert.NotEmpty(name);
        Bounded.Run(() => Assert.ThrowsAny<OperationCanceledException>(() => computation(new CancellationToken(true))));
    }

    [Fact]
    public void An_ensemble_that_would_take_days_ends_soon_after_it_is_cancelled()
    {
        using CancellationTokenSource source = new();
        source.CancelAfter(TimeSpan.FromMilliseconds(200));
        Bounded.Run(() => Assert.ThrowsAny<OperationCanceledException>(
            () => new DeploymentDispersion(Invented.Deployment, new DespinUncertainty()).Run(1_000_000, cancellation: source.Token)));
    }

    [Fact]
    public void A_cancelled_integration_goes_on_where_it_was_left()
    {
        OdeIntegrator<Decay, NoEvents, DormandPrince853> integrator = Integrator();
        Assert.Throws<OperationCanceledException>(() => integrator.Run(1, new CancellationToken(true)));
        integrator.Run(1);
        Assert.Equal(Math.Exp(-1), integrator.State[0], 1e-12);
    }

    private static OdeIntegrator<Decay, NoEvents, DormandPrince853> Integrator()
    {
        OdeIntegrator<Decay, NoEvents, DormandPrince853> integrator = new(default, default, OdeTolerances.Of(1e-12, 1e-14));
        integrator.Start(0, [1]);
        return integrator;
    }

    private static ForcedMotion<Body, Free> Forced() => ForcedMotion<Body, Free>.Of(
        Invented.Stage(), default, default, Duration.Zero, new BodyState<Body>(default, default, Invented.Rates(0.1, 0, 7), default));

    private struct Decay : IOdeSystem
    {
        public readonly int Dimension => 1;

        public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives) => derivatives[0] = -state[0];
    }

    private struct Free : ILoads<Body>
    {
        public readonly BodyLoads<Body> At(Duration time, in BodyState<Body> state) => default;
    }
}
