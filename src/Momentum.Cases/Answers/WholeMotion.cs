using Momentum.Cases.Keys;
using Momentum.Cases.Sections;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The sized design deployed in three dimensions, with everything that the planar computation leaves out.</summary>
internal sealed class WholeMotion
{
    private readonly Lazy<ResidualSpin?> _residual;

    private WholeMotion(DeploymentResult result)
    {
        Result = result;
        _residual = new Lazy<ResidualSpin?>(Explain);
    }

    /// <summary>The deployment.</summary>
    public DeploymentResult Result { get; }

    /// <summary>Its final spin split by causes; null if without one of them there is no such motion. Computed when first asked for.</summary>
    public ResidualSpin? Residual => _residual.Value;

    /// <summary>Deploys a design.</summary>
    /// <param name="given">The case.</param>
    /// <param name="body">Its body.</param>
    /// <param name="motion">The planar motion of the sized design.</param>
    /// <param name="findings">Takes the warnings.</param>
    /// <param name="cancellation">Ends the computation.</param>
    /// <param name="whyNot">Why there is no such motion, as the middle of a sentence; empty if there is.</param>
    /// <returns>
    /// Null if only the moment about the spin axis is stated, which says nothing of the others, or if the deployment is
    /// refused, of which a warning then tells.
    /// </returns>
    public static WholeMotion? Of(Case given, SpinningBody body, PlanarMotion motion, Findings findings, CancellationToken cancellation, out string whyNot)
    {
        if (body.Inertia is null)
        {
            whyNot = "only the moment of inertia about the spin axis is stated";
            return null;
        }

        try
        {
            var whole = new WholeMotion(Deployment(given, body, motion.Design, cancellation).Deploy(cancellation));
            foreach (DeploymentWarning warning in whole.Result.Warnings.Where(w => !AlreadyTold(w.Kind)))
            {
                findings.Warn(given.Despin, null, warning.Text.TrimEnd('.'), Remedy(warning.Kind));
            }

            whyNot = "";
            return whole;
        }
        catch (ComputationRefusedException refusal)
        {
            whyNot = $"in three dimensions the motion was refused: {BodyJudge.Clause(refusal.Message)}";
            findings.Warn(given.Despin, null, whyNot, "What is uncertain is not judged; the figures are those of the planar motion.");
            return null;
        }
    }

    /// <summary>What was taken for granted, in sentences.</summary>
    public static IEnumerable<string> AssumptionsOf(Case given, WholeMotion whole)
    {
        Cord cord = whole.Result.Deployment.Cords[0];
        yield return "In three dimensions the wound cord lies in a groove round the drum, the free cord is straight"
            + (cord.Pieces > 1 ? FormattableString.Invariant($" between the joints of its {cord.Segments} pieces") : "")
            + ", and the body is rigid: slosh and bending take no part.";
        if (given.Bench is not null)
        {
            yield return "On the rig the body turns about the bearing alone; the floor is level and the bearing upright.";
            yield break;
        }

        yield return given.Spin.Nutation is null
            ? "Before release the body turns purely about the spin axis: no wobble is stated."
            : "The wobble before release points from the spin axis towards the first weight; over the cases of the spread it points anywhere.";
    }

    /// <summary>Height of the cord plane along the spin axis from the body origin.</summary>
    public static Length CordHeight(Case given, SpinningBody body) =>
        body.CentreOfMass.FromOrigin.ComponentAlong(body.SpinAxis) + (given.Despin.CordPlaneOffset?.Value ?? Length.Zero);

    private ResidualSpin? Explain()
    {
        try
        {
            return Result.Deployment.ExplainFinalSpin();
        }
        catch (ComputationRefusedException)
        {
            return null;
        }
    }

    /// <summary>The case is judged for these already, with the key that is at fault.</summary>
    private static bool AlreadyTold(DeploymentWarningKind kind) =>
        kind is DeploymentWarningKind.SpinAboutLeastInertia or DeploymentWarningKind.CordBreaks;

    private static string Remedy(DeploymentWarningKind kind) => kind switch
    {
        DeploymentWarningKind.NutationBeyondRequirement =>
            "The rates across the axis are what the wobble before release and the imbalance leave: reduce these, leave some spin, or limit the rates instead (require.transverse_rate).",
        DeploymentWarningKind.CordSlack => "Expect a jerk when it comes taut again; a slack cord can foul the body.",
        DeploymentWarningKind.CordWrapsBack or DeploymentWarningKind.CordStaysOn or DeploymentWarningKind.UnwindingReversed or DeploymentWarningKind.WeightStrikesHub =>
            "Let go earlier, or check let_go, cord_length and weight_mass.",
        _ => "See that it can be allowed.",
    };

    /// <summary>The deployment of a sized design.</summary>
    public static CordDeployment Deployment(Case given, SpinningBody body, PlanarDesign design, CancellationToken cancellation)
    {
        CordSection? cord = given.Despin.Cord;
        Force? stiffness = design is SpringCordDesign ? null : cord?.Stiffness?.Value;
        CordDeployment deployment = design.InSpace(
            MassProperties<Body>.Of(body.Mass, body.CentreOfMass, body.Inertia!.Value),
            body.SpinAxis,
            given.Despin.CordPlaneOffset?.Value,
            stiffness,
            stiffness is null ? 0 : cord?.Damping?.Value.DecimalFractions ?? 0,
            cancellation);
        Length height = deployment.Cords[0].PlaneHeight;
        deployment = deployment.EachCord(c => c with { BreakingLoad = cord?.BreakingLoad?.Value }) with
        {
            Deck = given.Despin.DeckEdge is { } edge ? new DeckEdge(edge.Radius.Value, height + edge.Height.Value) : null,
            Rig = given.Bench is { } bench ? Rig(bench, body.SpinInertia, design.Hub.Spin, height) : null,
            LargestNutation = given.Bench is null ? given.Require?.Nutation?.Bound : null,
        };
        return given.Spin.Nutation is { } nutation && given.Bench is null ? deployment.Wobbling(nutation.Value) : deployment;
    }

    /// <summary>The rig, whose friction is stated by what it does to a spin inertia at a spin rate.</summary>
    public static BenchRig Rig(BenchSection bench, MassMomentOfInertia spinInertia, RotationalSpeed spin, Length cordHeight)
    {
        Torque viscous = bench.SpinDownTime is { } time
            ? Torque.FromNewtonMeters(spinInertia.KilogramSquareMeters * spin.RadiansPerSecond / time.Value.Seconds)
            : Torque.Zero;
        var rig = new BenchRig
        {
            CoulombFriction = bench.FrictionTorque?.Value ?? Torque.Zero,
            ViscousFriction = viscous,
            FloorBelow = bench.CordHeight?.Value - cordHeight,
            Walls = bench.WallDistance?.Value,
        };
        return bench.Gravity is { } gravity ? rig with { Gravity = gravity.Value } : rig;
    }
}
