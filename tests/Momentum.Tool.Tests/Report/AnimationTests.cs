using Momentum.Cases.Report;
using Momentum.Cases.Report.Model;
using PuppeteerSharp;

namespace Momentum.Tool.Tests.Report;

/// <summary>The animation shows the trajectory it was given, at the time it says.</summary>
[Collection(BrowserTests.Name)]
public sealed class AnimationTests(Chromium chromium)
{
    // Frames are written to 0.1 mm, and a straight line between two of them cuts the path's corner: with 240 frames over about
    // 20 rad of turning and 4 m of reach, by r (Δα)²/8 = 4·(20/240)²/8 = 0.0035 m at most.
    private const double OnPath = 0.004;
    private const double OnFrame = 6e-5;

    private static readonly string _html = HtmlReport.Render(SampleReport.Full);
    private static readonly Unwinding _motion = SampleReport.Full.Unwinding!;

    [Fact]
    public async Task At_the_start_the_weights_lie_on_the_hub()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("Home");

        Assert.Equal(0, await page.Time());
        Assert.Equal(SampleReport.Motion.Radius, await page.Metres("weight-1", "cx"), OnFrame);
        Assert.Equal(0, await page.Metres("weight-1", "cy"), OnFrame);
        Assert.Equal(-SampleReport.Motion.Radius, await page.Metres("weight-2", "cx"), OnFrame);
        Assert.Equal("72.00", await page.Text("read-spin"));
    }

    [Fact]
    public async Task Stepping_the_slider_with_the_keyboard_moves_the_weights_to_where_the_closed_form_has_them()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("Home");
        double before = 0;
        for (int i = 0; i < 60; i++)
        {
            await page.Page.Keyboard.PressAsync("ArrowRight");
            if (i % 15 == 14)
            {
                double time = await page.Time();
                Assert.True(time > before);
                before = time;
                await AssertUnwinding(page, time);
            }
        }
    }

    [Fact]
    public async Task Dragging_the_slider_moves_the_weights_to_where_the_closed_form_has_them()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        IElementHandle slider = (await page.Page.QuerySelectorAsync("#time"))!;
        await slider.ScrollIntoViewAsync();
        BoundingBox box = (await slider.BoundingBoxAsync())!;
        decimal middle = box.Y + (box.Height / 2);
        await page.Page.Mouse.MoveAsync(box.X + (box.Width * 0.2m), middle);
        await page.Page.Mouse.DownAsync();
        await page.Page.Mouse.MoveAsync(box.X + (box.Width * 0.5m), middle);
        await page.Page.Mouse.UpAsync();

        double time = await page.Time();
        Assert.InRange(time, 0.4 * _motion.Frames[^1].Time, 0.6 * _motion.Frames[^1].Time);
        await AssertUnwinding(page, time);
    }

    [Fact]
    public async Task Buttons_of_the_phases_go_to_their_starts()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.ClickAsync("#phases li:nth-child(2) button");

        Assert.Equal("hinging", await page.Text("read-phase"));
        Assert.Equal(SampleReport.Motion.Length, await DistanceFromTangentPoint(page), OnPath);

        await page.Page.ClickAsync("#phases li:nth-child(3) button");
        Assert.Equal("hidden", await page.Ask<string>("document.getElementById('cord-1').getAttribute('visibility')"));
        Assert.Equal("true", await page.Ask<string>("document.querySelector('#phases li:nth-child(3) button').getAttribute('aria-current')"));
    }

    [Fact]
    public async Task At_the_end_the_figures_beside_it_are_those_of_the_last_frame()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("End");
        CordFrame last = _motion.Frames[^1].Cords[0];

        Assert.Equal(last.Weight.X.Meters, await page.Metres("weight-1", "cx"), OnFrame);
        Assert.Equal(-last.Weight.Y.Meters, await page.Metres("weight-1", "cy"), OnFrame);
        Assert.Equal("0.00", await page.Text("read-spin"));
        Assert.Equal("gone", await page.Text("read-tension-1"));
        Assert.Contains("free flight", await page.Ask<string>("document.getElementById('time').getAttribute('aria-valuetext')"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cursor_of_the_spin_chart_follows_the_time()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("End");

        Assert.True(await page.Ask<bool>("""
            [...document.querySelectorAll('.cursor')].every(c => Math.abs(c.getAttribute('x1') - (Number(c.dataset.origin) + Number(c.dataset.scale) * Number(document.getElementById('time').value))) < 0.01)
            """));
        Assert.Equal(5, await page.Ask<int>("document.querySelectorAll('.cursor').length"));
    }

    [Fact]
    public async Task Play_starts_from_release_and_pause_holds_the_picture()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        double poster = await page.Time();
        await page.Page.ClickAsync("#play");
        await page.Page.WaitForExpressionAsync("Number(document.getElementById('time').value) > 0.02");
        Assert.True(await page.Time() < poster);
        double first = await page.Time();
        await page.Page.WaitForExpressionAsync($"Number(document.getElementById('time').value) > {first} + 0.01");

        Assert.Equal("Pause", await page.Text("play"));
        await page.Page.ClickAsync("#play");
        double held = await page.Time();
        double heldX = await page.Metres("weight-1", "cx");
        await page.Ask<int>("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(0))))");

        Assert.Equal("Play", await page.Text("play"));
        Assert.Equal(held, await page.Time());
        Assert.Equal(heldX, await page.Metres("weight-1", "cx"));
    }

    [Fact]
    public async Task Playing_stops_at_the_end_and_begins_anew_after_it()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.SelectAsync("#speed", "1");
        await page.Page.ClickAsync("#phases li:nth-child(3) button");
        await page.Page.ClickAsync("#play");
        await page.Page.WaitForExpressionAsync("document.getElementById('play').textContent === 'Play'");
        Assert.Equal(_motion.Frames[^1].Time, await page.Time(), 1e-3);

        await page.Page.ClickAsync("#play");
        await page.Page.WaitForExpressionAsync("document.getElementById('read-phase').textContent === 'unwinding'");
    }

    [Fact]
    public async Task Space_plays_and_pauses_with_the_slider_in_focus()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("Space");
        Assert.Equal("Pause", await page.Text("play"));
        await page.Page.Keyboard.PressAsync("Space");
        Assert.Equal("Play", await page.Text("play"));
    }

    [Fact]
    public async Task Every_control_is_reached_with_the_tab_key()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        var reached = new HashSet<string>();
        for (int i = 0; i < 40; i++)
        {
            await page.Page.Keyboard.PressAsync("Tab");
            reached.Add(await page.Ask<string>("document.activeElement.id || document.activeElement.textContent"));
        }

        Assert.Superset(new HashSet<string> { "stage", "Along the axis", "Three-quarter", "From the side", "zoom-in", "zoom-out", "play", "speed", "time", "unwinding", "hinging", "free flight", "Skip to the answer", "cautions" }, reached);
    }

    [Fact]
    public async Task Who_asked_for_less_motion_gets_stills()
    {
        await using OpenPage page = await chromium.OpenAsync(_html, lessMotion: true);
        await page.Page.ClickAsync("#play");
        await page.Page.WaitForExpressionAsync("Number(document.getElementById('time').value) > 0");

        // The first still after the start is a twelfth of the whole; a smooth animation would show less first.
        Assert.Equal(_motion.Frames[^1].Time / 12, await page.Time(), 0.01);
    }

    private static async Task AssertUnwinding(OpenPage page, double time)
    {
        PlanarMotion motion = SampleReport.Motion;
        double c = 1 + (motion.Inertia / (motion.Weights * motion.Radius * motion.Radius));
        double phi = motion.InitialSpin * time;
        double tangent = 2 * Math.Sqrt(c) * Math.Atan(phi / Math.Sqrt(c));
        double x = motion.Radius * (Math.Cos(tangent) + (phi * Math.Sin(tangent)));
        double y = motion.Radius * (Math.Sin(tangent) - (phi * Math.Cos(tangent)));

        Assert.True(time < motion.UnwindingEnds);
        Assert.Equal(x, await page.Metres("weight-1", "cx"), OnPath);
        Assert.Equal(-y, await page.Metres("weight-1", "cy"), OnPath);
        Assert.Equal(-x, await page.Metres("weight-2", "cx"), OnPath);
        Assert.Equal(motion.Radius * Math.Cos(tangent), await page.Ask<double>("document.getElementById('cord-1').points[0].x / Number(stage.dataset.scale)"), OnPath);
    }

    private static Task<double> DistanceFromTangentPoint(OpenPage page) => page.Ask<double>("""
        (([root, weight]) => Math.hypot(weight.x - root.x, weight.y - root.y))(document.getElementById('cord-1').points)
          / Number(document.getElementById('stage').dataset.scale)
        """);
}
