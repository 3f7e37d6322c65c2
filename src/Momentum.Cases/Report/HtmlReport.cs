using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Momentum.Cases.Answers;
using Momentum.Cases.Report.Composing;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Report.Pictures;

namespace Momentum.Cases.Report;

/// <summary>
/// Writes a report as one HTML file that opens offline. A pure function: the same report gives the same bytes, whatever the
/// clock, the culture or the machine.
/// </summary>
public static class HtmlReport
{
    /// <summary>Writes the page of an answer.</summary>
    public static void Write(Answer answer, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(utf8);
        utf8.Write(Encoding.UTF8.GetBytes(Render(AnswerReport.Of(answer))));
    }

    /// <summary>Renders the page.</summary>
    /// <exception cref="ArgumentException">A figure or a curve of the report cannot be shown.</exception>
    internal static string Render(DespinReport report)
    {
        string style = Page.Fill(Page.Part("report.css"), new Dictionary<string, string>
        {
            ["hash"] = ShortHash(report.Case),
        });
        string script = report.Unwinding is null ? "" : Page.Part("stage.js") + Page.Part("player.js");
        var slots = new Dictionary<string, Markup>
        {
            ["title"] = Markup.Of($"{report.Title}"),
            ["style-hash"] = Markup.Trusted(Hash(style)),
            ["script-hash"] = Markup.Trusted(Hash(script)),
            ["style"] = Markup.Trusted(style),
            ["script"] = Markup.Trusted(script),
            ["summary"] = Markup.Of($"{report.Summary}"),
            ["verdict"] = Verdict(report),
            ["identity"] = Identity(report.Case),
            ["answers"] = Table(report.Answers),
            ["warnings"] = Warnings(report.Warnings),
            ["further"] = Further(report.Further),
            ["requirements"] = Requirements(report.Requirements),
            ["springs-link"] = Markup.Trusted(report.Springs is null ? "" : "<li><a href=\"#springs\">Spring cords</a></li>"),
            ["springs"] = SpringPart.Render(report.Springs),
            ["whole-link"] = Markup.Trusted(report.Whole is null && report.WhyNotWhole.Length == 0 ? "" : "<li><a href=\"#whole\">Whole motion</a></li>"),
            ["whole"] = WholeMotionPart.Render(report.Whole, report.WhyNotWhole),
            ["pictures"] = Pictures(report),
            ["unwinding-link"] = Markup.Trusted(report.Unwinding is null ? "" : "<li><a href=\"#unwinding\">Unwinding</a></li>"),
            ["unwinding"] = report.Unwinding is null ? Markup.None : Player(report.Unwinding),
            ["spread"] = Spread(report),
            ["assumptions"] = Assumptions(report.Assumptions),
            ["checks"] = Checks(report.Checks),
            ["cautions"] = Markup.Each(report.Cautions, c => Markup.Of($"<li>{c}</li>")),
            ["inputs"] = Inputs(report.Inputs),
            ["unused"] = Unused(report.Unused),
            ["version"] = Markup.Of($"{report.Case.ToolVersion}"),
            ["short-hash"] = Markup.Of($"{ShortHash(report.Case)}"),
        };
        return Page.Fill(Page.Part("report.html"), slots.ToDictionary(s => s.Key, s => s.Value.ToString()));
    }

    /// <summary>Enough digits to match a printed sheet by; hexadecimal only, since they also go into the style sheet.</summary>
    private static string ShortHash(CaseIdentity source) => string.Concat(source.Sha256.Where(char.IsAsciiHexDigit).Take(16));

    private static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static Markup Verdict(DespinReport report)
    {
        int missed = report.Requirements.Count(r => r.Verdict == Answers.Verdict.NotMet);
        int open = report.Requirements.Count(r => r.Verdict == Answers.Verdict.NotShown);
        int all = report.Requirements.Count;
        (string kind, string sign, string words) = report.Verdict switch
        {
            Model.Verdict.CheckFailed => ("bad", "✗", "A check failed: do not use these figures"),
            Model.Verdict.NotMet => ("bad", "✗", $"{missed} of {all} requirements not met"),
            Model.Verdict.NotAllShown => ("open", "○", $"{all - open} of {all} requirements met, {open} not shown"),
            Model.Verdict.NothingRequired => ("open", "○", "The case states no requirement"),
            _ => ("good", "✓", all switch { 1 => "The requirement is met", 2 => "Both requirements met", _ => $"All {all} requirements met" }),
        };
        return Markup.Of($"<p class=\"verdict {kind}\"><span aria-hidden=\"true\">{sign}</span> {words}</p>");
    }

    private static Markup Identity(CaseIdentity source) => Markup.Of($"""
        <dl class="identity">
        <div><dt>Case file</dt><dd>{source.FileName}</dd></div>
        <div class="hash"><dt>SHA-256 of the case file</dt><dd><code>{source.Sha256}</code></dd></div>
        <div><dt>Computed by</dt><dd>momentum {source.ToolVersion}</dd></div>
        </dl>
        """);

    /// <summary>A row for each figure, count or word.</summary>
    private static Markup Table(IEnumerable<AnswerNode> nodes) => Markup.Of($"""
        <table class="answers">
        <thead><tr><th scope="col">Quantity</th><th scope="col" class="number">Value</th><th scope="col">Unit</th></tr></thead>
        <tbody>
        {Markup.Each(nodes, Row)}
        </tbody>
        </table>
        """);

    private static Markup Row(AnswerNode node) => node switch
    {
        AnswerFigure f => Markup.Of($"<tr{Class(f.Solved ? "solved" : "")}><th scope=\"row\">{f.Name}{(f.Solved ? Markup.Trusted(" <em>solved for</em>") : Markup.None)}{Note(f.Note)}</th><td class=\"number\">{Aligned(Figure.Of(f))}</td><td class=\"unit\">{f.Unit}</td></tr>"),
        AnswerCount c => Markup.Of($"<tr><th scope=\"row\">{c.Name}{Note(c.Note)}</th><td class=\"number\">{c.Count.ToString(CultureInfo.InvariantCulture)}</td><td class=\"unit\"></td></tr>"),
        AnswerWord w => Markup.Of($"<tr><th scope=\"row\">{w.Name}{Note(w.Note)}</th><td class=\"number\">{w.Shown}</td><td class=\"unit\"></td></tr>"),
        _ => Markup.None,
    };

    /// <summary>A table for each group, side by side where there is room.</summary>
    private static Markup Further(IReadOnlyList<AnswerGroup> groups) => groups.Count == 0 ? Markup.None : Markup.Of($"""
        <section id="further" aria-labelledby="further-heading">
        <h2 id="further-heading">Further figures</h2>
        <div class="sheet">
        {Markup.Each(groups, g => Markup.Of($"<div><h3>{g.Name}</h3>{Table(g.Nodes)}</div>"))}
        </div>
        </section>
        """);

    private static Markup Warnings(IReadOnlyList<string> warnings) => warnings.Count == 0 ? Markup.None : Markup.Of($"""
        <div class="warning">
        <p><strong>Look at these before signing.</strong></p>
        <ul>{Markup.Each(warnings, w => Markup.Of($"<li>{w}</li>"))}</ul>
        </div>
        """);

    private static Markup Requirements(IReadOnlyList<JudgedRequirement> requirements) => requirements.Count == 0
        ? Markup.Trusted("<p class=\"absent\">The case states no requirement, so nothing was judged.</p>")
        : Markup.Of($"""
        <table class="requirements">
        <thead><tr><th scope="col">Requirement</th><th scope="col" class="number">Limit</th><th scope="col" class="number">Computed</th><th scope="col">Outcome</th></tr></thead>
        <tbody>
        {Markup.Each(requirements, r => Markup.Of($"<tr><th scope=\"row\">{r.Name}{Note(r.Note)}</th><td class=\"number\">{r.Limit.Trim()}</td><td class=\"number\">{(r.Shown is { } shown ? new Figure(shown, r.Unit).ToString() : "–")}</td><td>{OutcomeOf(r.Verdict)}</td></tr>"))}
        </tbody>
        </table>
        """);

    private static Markup OutcomeOf(Answers.Verdict verdict) => Markup.Trusted(verdict switch
    {
        Answers.Verdict.Met => "<span class=\"outcome good\"><span aria-hidden=\"true\">✓</span> met</span>",
        Answers.Verdict.MetAtNominal => "<span class=\"outcome good\"><span aria-hidden=\"true\">✓</span> met at nominal</span>",
        Answers.Verdict.NotMet => "<span class=\"outcome bad\"><span aria-hidden=\"true\">✗</span> not met</span>",
        _ => "<span class=\"outcome open\"><span aria-hidden=\"true\">○</span> not shown</span>",
    });

    private static Markup Pictures(DespinReport report)
    {
        if (report.Unwinding is null && report.Charts.Count == 0)
        {
            return Markup.Trusted("<p class=\"absent\">This computation has no history to draw.</p>");
        }

        Markup paths = report.Unwinding is null ? Markup.None : CordPathsPicture.Draw(report.Unwinding);
        Markup pointing = report.Unwinding is { Wobbles: true } ? PointingPicture.Draw(report.Unwinding) : Markup.None;
        Markup charts = Markup.Each(report.Charts.Index(), c => LineChartPicture.Draw(c.Item, $"chart-{c.Index + 1}"));
        return Markup.Of($"<div class=\"pictures\">{paths}{pointing}{charts}</div>");
    }

    private static Markup Player(Unwinding motion) => Markup.Trusted(Page.Fill(Page.Part("player.html"), new Dictionary<string, string>
    {
        ["stage"] = UnwindingStage.Draw(motion).ToString(),
        ["data"] = UnwindingStage.Data(motion).ToString(),
        ["standard-view"] = motion.IsWhole ? "quarter" : "axis",
        ["seen-from"] = motion.Room is null ? "the hub’s centre of mass" : "the bearing’s axis beside the hub’s centre of mass",
        ["cord-words"] = motion.Frames[0].Cords.Any(c => c.Joints.Count > 0)
            ? "Cords are drawn straight between the joints of the pieces that their mass is cut into." : "Cords are drawn straight.",
        ["around-words"] = Markup.Of($"{UnwindingStage.AroundWords(motion)}").ToString(),
        ["hub-words"] = Markup.Of($"{motion.Hub.Words}").ToString(),
        ["spin-unit"] = Markup.Of($"{motion.SpinUnit}").ToString(),
        ["wobble"] = WobbleReadouts(motion).ToString(),
        ["cords"] = CordReadouts(motion).ToString(),
        ["strip"] = Strips(motion).ToString(),
    }));

    private static Markup WobbleReadouts(Unwinding motion) => !motion.Wobbles ? Markup.None : Markup.Of($"""
        <div><dt>Transverse rate</dt><dd><span id="read-transverse"></span> {motion.SpinUnit}</dd></div>
        <div><dt>Nutation angle</dt><dd><span id="read-nutation"></span>°</dd></div>
        """);

    private static Markup CordReadouts(Unwinding motion)
    {
        IEnumerable<int> rows = Enumerable.Range(1, motion.CordsAreAlike ? 1 : motion.Drums.Count);
        return Markup.Of($"""
            <table class="cords">
            <thead><tr><th scope="col">Cord</th><th scope="col" class="number">Free length, m</th><th scope="col" class="number">Tension, N</th></tr></thead>
            <tbody>
            {Markup.Each(rows, c => Markup.Of($"<tr><th scope=\"row\">{CordName(motion, c)}</th><td class=\"number\" id=\"read-length-{c}\"></td><td class=\"number\" id=\"read-tension-{c}\"></td></tr>"))}
            </tbody>
            </table>
            """);
    }

    private static Markup CordName(Unwinding motion, int cord) =>
        motion.CordsAreAlike ? Markup.Trusted("each") : Markup.Of($"{Ink.DotOfCord(cord - 1)}{cord}");

    private static Markup Strips(Unwinding motion) => Markup.Of($"""
        {Strip(motion, "strip", "Spin rate", motion.SpinUnit, f => f.Spin)}
        {(motion.Wobbles ? Strip(motion, "strip-2", "Nutation angle", "°", f => f.Wobble!.Value.NutationAngle) : Markup.None)}
        """);

    private static Markup Strip(Unwinding motion, string id, string name, string unit, Func<UnwindingFrame, double> value)
    {
        var chart = new LineChart
        {
            Title = $"{name} during the animation",
            X = new ChartAxis("Time", "s"),
            Y = new ChartAxis(name, unit),
            Series = [new ChartSeries(name, [.. motion.Frames.Select(f => f.Time)], [.. motion.Frames.Select(value)])],
            FollowsAnimation = true,
        };
        return Markup.Of($"<div><p class=\"axis-name\">{chart.Y.ToString()}</p>{LineChartPicture.Plot(chart, id, motion.Wobbles ? 125 : 210)}</div>");
    }

    private static Markup Spread(DespinReport report)
    {
        Markup whole = report.WholeSpread is null ? Markup.None : WholeSpread(report.WholeSpread);
        Markup absent = report.ResidualSpin is not null || report.WholeSpread is not null ? Markup.None : Markup.Trusted(
            "<p class=\"absent\">The residual spin rate was not sampled over the tolerances: every figure is that of the nominal design.</p>");
        if (report.ResidualSpin is null && report.Sensitivity is null)
        {
            return Markup.Of($"{absent}{whole}");
        }

        Markup histogram = report.ResidualSpin is null ? Markup.None : HistogramPicture.Draw(report.ResidualSpin, "residual-spin");
        Markup sensitivity = report.Sensitivity is null ? Markup.None : SensitivityPicture.Draw(report.Sensitivity);
        return Markup.Of($"{absent}<div class=\"pictures\">{histogram}{sensitivity}</div>{whole}");
    }

    private static Markup WholeSpread(WholeSpreadRows spread)
    {
        int half = (spread.Rows.Count + 1) / 2;
        return Markup.Of($"""
            <h3>Over the cases</h3>
            <p>{spread.Heading}.</p>
            <div class="sheet">
            <div>{Table(spread.Rows.Take(half))}</div>
            <div>{Table(spread.Rows.Skip(half))}</div>
            </div>
            """);
    }

    private static Markup Assumptions(IReadOnlyList<string> assumptions) => Markup.Of($"""
        <ul>{Markup.Each(assumptions, a => Markup.Of($"<li>{a}</li>"))}</ul>
        """);

    private static Markup Checks(IReadOnlyList<SelfCheck> checks) => checks.Count == 0
        ? Markup.Trusted("<p class=\"absent\">No check was run.</p>")
        : Markup.Of($"""
        <table class="checks">
        <thead><tr><th scope="col">Check</th><th scope="col" class="number">Found</th><th scope="col" class="number">Allowed</th><th scope="col">Result</th></tr></thead>
        <tbody>
        {Markup.Each(checks, c => Markup.Of($"<tr><th scope=\"row\">{c.Name}</th><td class=\"number\">{Digits(c.Departure, 2)}</td><td class=\"number\">{Digits(c.Allowed, 1)}</td><td>{ResultOf(c.Passed)}</td></tr>"))}
        </tbody>
        </table>
        """);

    private static string Digits(double ratio, int digits) => double.IsNaN(ratio) ? "–" : new Figure(ratio, "", digits).Number;

    private static Markup ResultOf(bool passed) => Markup.Trusted(passed
        ? "<span class=\"outcome good\"><span aria-hidden=\"true\">✓</span> passed</span>"
        : "<span class=\"outcome bad\"><span aria-hidden=\"true\">✗</span> failed</span>");

    private static Markup Inputs(IReadOnlyList<InputRow> inputs) => Markup.Of($"""
        <table class="inputs">
        <thead><tr><th scope="col">Input</th><th scope="col">As given, with tolerance</th><th scope="col">In SI</th></tr></thead>
        <tbody>
        {Markup.Each(inputs, i => Markup.Of($"<tr><th scope=\"row\">{i.Name}<small><code>{i.Key}</code></small></th><td class=\"given\">{i.Given}{Note(i.Tolerance)}</td><td class=\"si\">{i.Si?.ToString() ?? ""}</td></tr>"))}
        </tbody>
        </table>
        """);

    private static Markup Unused(IReadOnlyList<UnusedKey> unused) => unused.Count == 0 ? Markup.None : Markup.Of($"""
        <h3>Read, not used yet</h3>
        <p>These keys of the case file were read and found valid, and have no effect on any figure here.</p>
        <ul class="unused">{Markup.Each(unused, u => Markup.Of($"<li><code>{u.Key}</code><small>{u.Given}</small></li>"))}</ul>
        """);

    private static Markup Note(string note) => note.Length == 0 ? Markup.None : Markup.Of($"<small>{note}</small>");

    private static Markup Class(string name) => name.Length == 0 ? Markup.None : Markup.Of($" class=\"{name}\"");

    /// <summary>A number in two boxes, so that the points of a column stand under each other.</summary>
    private static Markup Aligned(Figure figure)
    {
        string number = figure.Number;
        int point = number.IndexOf('.', StringComparison.Ordinal);
        return point < 0 || number.Contains('×', StringComparison.Ordinal)
            ? Markup.Of($"{number}<span class=\"decimals\"></span>")
            : Markup.Of($"{number[..point]}<span class=\"decimals\">{number[point..]}</span>");
    }
}
