using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;

namespace Momentum.Tool.Tests.Report;

public sealed class VerdictTests
{
    [Theory]
    [InlineData(true, new[] { "Met", "Met" }, "Met")]
    [InlineData(true, new[] { "Met", "NotShown" }, "NotAllShown")]
    [InlineData(true, new[] { "NotShown", "NotMet" }, "NotMet")]
    [InlineData(true, new string[0], "NothingRequired")]
    [InlineData(false, new[] { "Met" }, "CheckFailed")]
    [InlineData(false, new[] { "NotMet" }, "CheckFailed")]
    public void Verdict_is_the_worst_of_checks_and_requirements(bool checkPassed, string[] outcomes, string verdict)
    {
        DespinReport report = SampleReport.Full with
        {
            Checks = [new("check", checkPassed ? 0 : 2, 1)],
            Requirements = [.. outcomes.Select(o => new JudgedRequirement("r", "r", "< 1", 1, null, "", null, "", Enum.Parse<Momentum.Cases.Answers.Verdict>(o), ""))],
        };

        Assert.Equal(verdict, report.Verdict.ToString());
    }
}
