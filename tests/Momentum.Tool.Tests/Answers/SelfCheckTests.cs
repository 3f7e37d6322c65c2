using Momentum.Cases.Answers;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Model;
using Momentum.Tool.Tests.Report;

namespace Momentum.Tool.Tests.Answers;

/// <summary>A computation is trusted only if its checks on itself were made and passed.</summary>
public sealed class SelfCheckTests
{
    [Fact]
    public void A_check_that_could_not_be_made_has_failed_and_says_why()
    {
        var check = SelfCheck.NotMade("Closed form against numerical integration", "the step became too small");

        Assert.False(check.Passed);
        Assert.Contains("the step became too small", check.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_shows_such_a_check_as_failed_and_warns_of_its_figures()
    {
        DespinReport report = SampleReport.Full with { Checks = [.. SampleReport.Full.Checks, SelfCheck.NotMade("It", "some reason")] };
        string html = HtmlReport.Render(report);

        Assert.Contains("A check failed: do not use these figures", html, StringComparison.Ordinal);
        Assert.Contains("some reason", html, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_knows_its_failed_checks_whatever_shows_it() =>
        Assert.Empty(Solver.Solve(Judgement.Of(Momentum.Cases.CaseReader.Read(SampleCase.Text))).FailedChecks);
}
