using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Report.Pictures;

namespace Momentum.Cases.Report;

/// <summary>The part of the page about spring cords.</summary>
internal static class SpringPart
{
    /// <summary>The section; nothing if the cords were not sized as springs.</summary>
    public static Markup Render(SpringSection? springs) => springs is null ? Markup.None : Markup.Of($"""
        <section id="springs" aria-labelledby="springs-heading">
        <h2 id="springs-heading">What the spring cords forgive</h2>
        <p class="lead">{springs.Words}</p>
        <div class="sheet">
        <div>
        <h3>Change of the final spin rate, {springs.Rows[0].Springs.Unit}</h3>
        <table class="forgiven">
        <thead><tr><th scope="col">Error before release</th><th scope="col" class="number">Spring cords</th><th scope="col" class="number">Without stretch</th></tr></thead>
        <tbody>
        {Markup.Each(springs.Rows, r => Markup.Of($"<tr><th scope=\"row\">{r.Error}</th><td class=\"number\">{Change(r.Springs)}</td><td class=\"number\">{Change(r.WithoutStretch)}</td></tr>"))}
        </tbody>
        </table>
        <p class="caption">To first order. Without stretch: cords of the same weights and let-go that leave the same final spin rate.</p>
        </div>
        <div>{LineChartPicture.Draw(springs.SpinUp, "spin-up")}</div>
        </div>
        </section>
        """);

    private static string Change(AnswerFigure change) => new Figure(change.Shown, change.Unit, 3).Number;
}
