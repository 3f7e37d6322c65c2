using FsCheck.Xunit;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Composing;
using Momentum.Cases.Report.Model;
using Momentum.Tests.Deployment;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tool.Tests.Report;

/// <summary>Whatever the library can deploy, the report can show.</summary>
public sealed class AnyMotionTests
{
    private static readonly DespinMotion _planar = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRevolutionsPerMinute(72))
        .SizeCordLength(Mass.FromKilograms(0.62), RotationalSpeed.Zero, LetGo.Radial).Deploy();

    [Property(MaxTest = 30, Arbitrary = [typeof(AnyDeployment)])]
    public void Free_cords_are_drawn_as_long_as_they_are_and_the_page_atof_numbers(AnyDeployment any)
    {
        DeploymentResult result;
        try
        {
            result = any.Deployment.Deploy();
        }
        catch (ComputationRefusedException)
        {
            return;
        }

        WholePictures pictures = WholePictures.Of(result);
        Unwinding motion = pictures.Unwinding;
        foreach (UnwindingFrame frame in motion.Frames)
        {
            DeploymentState state = result.At(Duration.FromSeconds(frame.Time));
            foreach ((int cord, CordState at) in state.Cords.Index().Where(c => c.Item.Phase is CordPhase.Unwinding or CordPhase.Hinging))
            {
                // Cords without mass, straight wherever they are; the end of a turn is found by an arc tangent.
                Assert.Equal(at.FreeLength.Meters, (frame.Cords[cord].Weight - motion.Root(frame, cord)).Magnitude.Meters, 1e-9);
            }
        }

        string html = HtmlReport.Render(SampleReport.Full with
        {
            Whole = WholeMotionWords.Of(result, null, _planar),
            Unwinding = motion,
            Charts = pictures.Charts(_planar),
        });
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        Assert.InRange(html.Length, 50_000, 400_000);
    }
}
