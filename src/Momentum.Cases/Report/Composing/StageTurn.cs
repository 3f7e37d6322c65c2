using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers.Deployment;

namespace Momentum.Cases.Report.Composing;

/// <summary>How the hub's and the stage's axes stand to those of a deployment.</summary>
internal readonly struct StageTurn
{
    /// <summary>The axes of a deployment.</summary>
    public StageTurn(CordDeployment deployment)
    {
        Hub = HubToBody(deployment.SpinAxis);
        Rotation<HubAxes, Inertial> start = Hub.Then(deployment.Attitude);
        Inertial = Rotation<StageAxes, Inertial>.FromQuaternion(start.X, start.Y, start.Z, start.W).Inverse();
    }

    /// <summary>From the hub's axes to the body's.</summary>
    public Rotation<HubAxes, Body> Hub { get; }

    /// <summary>From inertial axes to the stage's.</summary>
    public Rotation<Inertial, StageAxes> Inertial { get; }

    /// <summary>
    /// The third axis along the spin axis; the first is where <see cref="Cord.StartAngle"/> counts from, the body axis that
    /// follows the nearest one to the spin axis in cyclic order, made square to it.
    /// </summary>
    private static Rotation<HubAxes, Body> HubToBody(Direction<Body> spin)
    {
        (double x, double y, double z) = (Math.Abs(spin.X), Math.Abs(spin.Y), Math.Abs(spin.Z));
        Direction<Body> next = z >= x && z >= y ? Direction<Body>.XAxis : x >= y ? Direction<Body>.YAxis : Direction<Body>.ZAxis;
        double along = (next.X * spin.X) + (next.Y * spin.Y) + (next.Z * spin.Z);
        var first = Direction<Body>.Of(next.X - (along * spin.X), next.Y - (along * spin.Y), next.Z - (along * spin.Z));
        return Rotation<HubAxes, Body>.FromMatrix(
        [
            first.X, (spin.Y * first.Z) - (spin.Z * first.Y), spin.X,
            first.Y, (spin.Z * first.X) - (spin.X * first.Z), spin.Y,
            first.Z, (spin.X * first.Y) - (spin.Y * first.X), spin.Z,
        ]);
    }
}
