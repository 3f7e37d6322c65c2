using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>A cord that goes slack is warned of if a reader can do something with it.</summary>
public class SlackWarningTests
{
    private static CordDeployment Springy => Invented.Deployment with
    {
        Cords = [Soft(0), Soft(180)],
        Until = Duration.FromSeconds(2.5),
    };

    // The hub wobbles, and a stretching cord begins without stretch: for microseconds its tension is a hair to either side.
    [Fact]
    public void A_stretching_cord_is_not_said_to_be_slack_as_winding_begins()
    {
        DeploymentResult result = Springy.Deploy();

        Assert.DoesNotContain(result.Events, e => e.Kind == DeploymentEventKind.CordSlack && e.Time < Duration.FromMilliseconds(1));
        Assert.DoesNotContain(result.Warnings, w => w.Kind == DeploymentWarningKind.CordSlack);
    }

    // A hub of some fiftieth of the stage against the same weights is turned back so fast that the springs, swinging, let go of it.
    [Fact]
    public void Slack_that_lasts_is_warned_of_once_for_each_cord()
    {
        CordDeployment light = Springy with
        {
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(3.6), Invented.Stage().CentreOfMass, InertiaTensor<Body>.Diagonal(Inertia(0.63), Inertia(0.64), Inertia(0.37))),
        };

        Assert.Equal([0, 1], light.Deploy().Warnings.Where(w => w.Kind == DeploymentWarningKind.CordSlack).Select(w => w.Cord).Order());
    }

    private static Cord Soft(double at) => Invented.Cord(at) with { Stiffness = Force.FromNewtons(1000) };

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
