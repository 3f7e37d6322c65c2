using System.Globalization;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Report.Pictures;

namespace Momentum.Cases.Report;

/// <summary>The part of the page about the motion in three dimensions.</summary>
internal static class WholeMotionPart
{
    /// <summary>The section; nothing if there is neither such a motion nor a reason why not.</summary>
    public static Markup Render(WholeMotionSection? whole, string whyNot) =>
        whole is not null ? Section(Tables(whole))
        : whyNot.Length > 0 ? Section(Markup.Of($"<p class=\"absent\">Not computed: {whyNot}. All figures are those of the planar motion.</p>"))
        : Markup.None;

    private static Markup Section(Markup content) => Markup.Of($"""
        <section id="whole" aria-labelledby="whole-heading">
        <h2 id="whole-heading">Whole motion, in three dimensions</h2>
        {content}
        </section>
        """);

    private static Markup Tables(WholeMotionSection whole) => Markup.Of($"""
        <p class="lead">{whole.Summary}</p>
        <div class="sheet">
        {(whole.Wobble.Count == 0 ? Markup.None : Markup.Of($"<div>{Wobble(whole.Wobble)}</div>"))}
        <div>{SpinSplitPicture.Draw(whole.FinalSpin, whole.SpinUnit)}</div>
        </div>
        <div class="sheet">
        <div>{Events(whole.Events)}{Peaks(whole.Peaks)}{Departures(whole)}{Landings(whole.Landings)}</div>
        <div>{Ledger(whole.Ledger)}</div>
        </div>
        """);

    private static Markup Wobble(IReadOnlyList<WobbleRow> rows) => Markup.Of($"""
        <h3>Wobble before, during and after</h3>
        <table class="wobble">
        <thead><tr><td></td>{Markup.Each(rows, r => Markup.Of($"<th scope=\"col\" class=\"number\">{r.Stretch}</th>"))}</tr></thead>
        <tbody>
        <tr><th scope="row">Largest nutation angle, °<small>spin axis to angular momentum</small></th>{Cells(rows, r => r.Nutation.Number)}</tr>
        <tr><th scope="row">Largest transverse rate, {rows[0].TransverseRate.Unit}<small>across the spin axis</small></th>{Cells(rows, r => r.TransverseRate.Number)}</tr>
        <tr><th scope="row">Angular momentum of the hub, {rows[0].Momentum.Unit}<small>about its centre of mass, at the end of the stretch</small></th>{Cells(rows, r => r.Momentum.Number)}</tr>
        <tr><th scope="row">Tilt of that vector, °<small>from where it pointed at the start</small></th>{Cells(rows, r => r.Tilt?.Number ?? "–")}</tr>
        <tr><th scope="row">Its direction<small>along axes that do not turn, the third along the spin axis at the start</small></th>{Cells(rows, r => r.Direction)}</tr>
        </tbody>
        </table>
        """);

    private static Markup Cells(IReadOnlyList<WobbleRow> rows, Func<WobbleRow, string> text) =>
        Markup.Each(rows, r => Markup.Of($"<td class=\"number\">{text(r)}</td>"));

    /// <summary>All times to the same place: four digits of the last.</summary>
    private static Markup Events(IReadOnlyList<EventRow> events)
    {
        double last = events.Max(e => e.Time);
        int decimals = last > 0 ? Math.Clamp(3 - (int)Math.Floor(Math.Log10(last)), 0, 9) : 0;
        return Markup.Of($"""
            <h3>What happens</h3>
            <table class="events">
            <thead><tr><th scope="col" class="number">Time, s</th><th scope="col">Event</th></tr></thead>
            <tbody>
            {Markup.Each(events, e => Markup.Of($"<tr><td class=\"number\">{e.Time.ToString("F" + decimals, CultureInfo.InvariantCulture)}</td><td>{e.Words}</td></tr>"))}
            </tbody>
            </table>
            """);
    }

    private static Markup Peaks(IReadOnlyList<PeakRow> peaks) => Markup.Of($"""
        <h3>Largest tension</h3>
        <table class="peaks">
        <thead><tr><th scope="col">Cord</th><th scope="col" class="number">Tension</th><th scope="col" class="number">At</th></tr></thead>
        <tbody>
        {Markup.Each(peaks, p => Markup.Of($"<tr><th scope=\"row\">{Ink.DotOfCord(p.Cord - 1)}{p.Cord}</th><td class=\"number\">{p.Tension.ToString()}</td><td class=\"number\">{p.Time.ToString()}</td></tr>"))}
        </tbody>
        </table>
        """);

    private static Markup Departures(WholeMotionSection whole) => Markup.Of($"""
        <h3>Weights at let-go</h3>
        <table class="letgos">
        <thead><tr><th scope="col">Weight</th><th scope="col" class="number">At</th><th scope="col" class="number">Speed</th><th scope="col" class="number">Kinetic energy</th></tr></thead>
        <tbody>
        {Markup.Each(whole.Departures, LetGo)}
        </tbody>
        </table>
        <p class="caption">{whole.SpeedsAreOf} The energy is that of the weight alone; its cord has some more.</p>
        """);

    private static Markup LetGo(LetGoRow row) => row.Time is not { } time
        ? Markup.Of($"<tr><th scope=\"row\">{Ink.DotOfCord(row.Cord - 1)}{row.Cord}</th><td class=\"number\" colspan=\"3\">does not let go</td></tr>")
        : Markup.Of($"<tr><th scope=\"row\">{Ink.DotOfCord(row.Cord - 1)}{row.Cord}</th><td class=\"number\">{time.ToString()}</td><td class=\"number\">{row.Speed?.ToString() ?? ""}</td><td class=\"number\">{row.Energy?.ToString() ?? ""}</td></tr>");

    private static Markup Landings(IReadOnlyList<LandingRow> landings) => landings.Count == 0 ? Markup.None : Markup.Of($"""
        <h3>Where the weights land</h3>
        <table class="landings">
        <thead><tr><th scope="col">Cord</th><th scope="col">Place</th><th scope="col" class="number">At</th><th scope="col" class="number">Speed</th><th scope="col" class="number">Energy</th></tr></thead>
        <tbody>
        {Markup.Each(landings, l => Markup.Of($"<tr><th scope=\"row\">{Ink.DotOfCord(l.Cord - 1)}{l.Cord}</th><td>{l.Place}</td><td class=\"number\">{l.Time.ToString()}</td><td class=\"number\">{l.Speed.ToString()}</td><td class=\"number\">{l.Energy.ToString()}</td></tr>"))}
        </tbody>
        </table>
        """);

    private static Markup Ledger(IReadOnlyList<LedgerGroup> groups) => Markup.Of($"""
        <h3>Ledger</h3>
        <table class="ledger">
        <thead><tr><td></td><th scope="col" class="number">At the start</th><th scope="col" class="number">Gone between</th><th scope="col" class="number">Left at the end</th></tr></thead>
        {Markup.Each(groups, Group)}
        </table>
        <p class="caption">What was there at the start is what has gone and what is left. What is carried away goes with the departed weights and cords. The axes do not turn; the third is the spin axis at the start.</p>
        """);

    private static Markup Group(LedgerGroup group) => Markup.Of($"""
        <tbody>
        <tr class="group"><th scope="rowgroup" colspan="4"><strong>{group.Name}, {group.Unit}</strong><small>{group.Closure}</small></th></tr>
        {Markup.Each(group.Rows, r => Markup.Of($"<tr{(r.IsSum ? Markup.Trusted(" class=\"sum\"") : Markup.None)}><th scope=\"row\">{r.Name}</th>{Entry(r.Start)}{Entry(r.Gone)}{Entry(r.End)}</tr>"))}
        </tbody>
        """);

    private static Markup Entry(Figure? entry) => Markup.Of($"<td class=\"number\">{entry?.Number ?? ""}</td>");
}
