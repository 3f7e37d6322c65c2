using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Tethers.Deployment;

namespace Momentum.Cases.Report.Composing;

/// <summary>How the hub's and the stage's axes stand to those of a deployment.</summary>
internal readonly struct StageTurn
{
    /// <summary>The axes of a deployment.</summary>
    public StageTurn(CordDeployment deployment)
    {
        Hub = deployment.HubAxes;
        Rotation<HubAxes, Inertial> start = Hub.Then(deployment.Attitude);
        Inertial = Rotation<StageAxes, Inertial>.FromQuaternion(start.X, start.Y, start.Z, start.W).Inverse();
    }

    /// <summary>From the hub's axes to the body's.</summary>
    public Rotation<HubAxes, Body> Hub { get; }

    /// <summary>From inertial axes to the stage's, along which the hub's lie at the start.</summary>
    public Rotation<Inertial, StageAxes> Inertial { get; }
}
