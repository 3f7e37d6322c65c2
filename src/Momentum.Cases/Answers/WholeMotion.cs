using Momentum.Cases.Keys;
using Momentum.Cases.Sections;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The sized design deployed in three dimensions, with everything that the planar computation leaves out.</summary>
internal sealed class WholeMotion
{
    // How long it is followed, in let-go times of the planar motion: late let-goes and some of the flight after.
    private const double Followed = 1.5;

    // A heavy cord that swings far out of its plane may let no fine chain of pieces through; a coarser one then does.
    private static readonly int[] _pieces = [4, 2, 1];

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
    /// <param name="whyNot">Why there is no such motion, as the middle of a sentence; empty if there is.</param>
    /// <returns>
    /// Null if only the moment about the spin axis is stated, which says nothing of the others, or if the deployment is
    /// refused, of which a warning then tells.
    /// </returns>
    public static WholeMotion? Of(Case given, SpinningBody body, PlanarMotion motion, Findings findings, out string whyNot)
    {
        if (body.Inertia is null)
        {
            whyNot = "only the moment of inertia about the spin axis is stated";
            return null;
        }

        string refused = "";
        foreach (int pieces in given.Despin.Cord?.LineDensity is null ? [1] : _pieces)
        {
            try
            {
                var whole = new WholeMotion(Deployment(given, body, motion, pieces).Deploy());
                foreach (DeploymentWarning warning in whole.Result.Warnings.Where(w => !AlreadyTold(w.Kind)))
                {
                    findings.Warn(given.Despin, null, warning.Text.TrimEnd('.'), Remedy(warning.Kind));
                }

                whyNot = "";
                return whole;
            }
            catch (ComputationRefusedException refusal)
            {
                refused = refusal.Message;
            }
        }

        whyNot = $"in three dimensions the motion was refused: {BodyJudge.Clause(refused)}";
        findings.Warn(given.Despin, null, whyNot, "Nutation is not judged; the figures are those of the planar motion.");
        return null;
    }

    /// <summary>What was taken for granted, in sentences.</summary>
    public static IEnumerable<string> AssumptionsOf(Case given, WholeMotion whole)
    {
        Cord cord = whole.Result.Deployment.Cords[0];
        yield return "In three dimensions the wound cord lies in a groove round the drum, the free cord is straight"
            + (cord.LineDensity > LinearDensity.Zero && cord.Segments > 1 ? FormattableString.Invariant($" between the joints of its {cord.Segments} pieces") : "")
            + ", and the body is rigid: slosh and bending take no part.";
        if (cord.LineDensity > LinearDensity.Zero)
        {
            yield return "Over the cases of the spread each heavy cord is taken as one straight piece.";
        }

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

    private static CordDeployment Deployment(Case given, SpinningBody body, PlanarMotion motion, int pieces)
    {
        PlanarDesign design = motion.Design;
        CordSection? cord = given.Despin.Cord;
        Force? stiffness = (design as SpringCordDesign)?.Stiffness ?? cord?.Stiffness?.Value;
        Length height = CordHeight(given, body);
        var deployment = new CordDeployment
        {
            Hub = MassProperties<Body>.Of(body.Mass, body.CentreOfMass, body.Inertia!.Value),
            SpinAxis = body.SpinAxis,
            Rates = Vector<RotationalSpeed, Body>.Along(body.SpinAxis, design.Hub.Spin),
            Cords = [.. Enumerable.Range(0, design.WeightCount).Select(i => new Cord
            {
                WeightMass = design.WeightMass,
                Length = design.CordLength,
                HubRadius = design.Hub.Radius,
                PlaneHeight = height,
                StartAngle = Angle.FromRadians(2 * Math.PI * i / design.WeightCount),
                LineDensity = cord?.LineDensity?.Value ?? LinearDensity.Zero,
                Segments = pieces,
                Stiffness = stiffness,
                DampingRatio = stiffness is null ? 0 : cord?.Damping?.Value.DecimalFractions ?? 0,
                BreakingLoad = cord?.BreakingLoad?.Value,
                LetGo = design.LetGo,
            })],
            Attitude = Upright(given.Vehicle.SpinAxis),
            Deck = given.Despin.DeckEdge is { } edge ? new DeckEdge(edge.Radius.Value, height + edge.Height.Value) : null,
            Rig = given.Bench is { } bench ? Rig(bench, body, design, height) : null,
            Until = (Followed * motion.LetGoTime) + Swing(design, stiffness),
            LargestNutation = given.Bench is null ? given.Require?.Nutation?.Bound : null,
        };
        return given.Spin.Nutation is { } wobble && given.Bench is null ? deployment.Wobbling(wobble.Value, Angle.Zero) : deployment;
    }

    /// <summary>A stretching cord lets go later than one that does not, by about as long as its weight takes to swing on it.</summary>
    private static Duration Swing(PlanarDesign design, Force? stiffness) => design is DespinDesign && stiffness is { } force
        ? Duration.FromSeconds(2 * Math.PI * Math.Sqrt(design.WeightMass.Kilograms * design.CordLength.Meters / force.Newtons))
        : Duration.Zero;

    /// <summary>Turned so that the spin axis begins along the inertial z axis, and the first weight's side along x.</summary>
    private static Rotation<Body, Inertial> Upright(Axis spinAxis) => spinAxis switch
    {
        Axis.X => Rotation<Body, Inertial>.FromQuaternion(-0.5, -0.5, -0.5, 0.5),
        Axis.Y => Rotation<Body, Inertial>.FromQuaternion(0.5, 0.5, 0.5, 0.5),
        _ => default,
    };

    private static BenchRig Rig(BenchSection bench, SpinningBody body, PlanarDesign design, Length cordHeight)
    {
        Torque viscous = bench.SpinDownTime is { } time
            ? Torque.FromNewtonMeters(body.SpinInertia.KilogramSquareMeters * design.Hub.Spin.RadiansPerSecond / time.Value.Seconds)
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
