using Momentum.Cases.Report;
using Momentum.Cases.Report.Model;
using PuppeteerSharp;

namespace Momentum.Tool.Tests.Report;

/// <summary>The view of the animation is turned by hand, by keys and by buttons, and stays true to scale.</summary>
[Collection(BrowserTests.Name)]
public sealed class StageTests(Chromium chromium)
{
    // Places are written to 0.1 mm and drawn to the last bit.
    private const double OnFrame = 1e-4;

    private static readonly string _html = HtmlReport.Render(SampleReport.Full);

    [Fact]
    public async Task Weight_is_drawn_where_the_view_projects_it()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await AtEnd(page);
        await page.Page.FocusAsync("#stage");
        await AssertProjected(page);
        foreach (string key in new[] { "ArrowLeft", "ArrowLeft", "ArrowDown", "ArrowDown", "ArrowDown", "+", "ArrowRight", "-", "-" })
        {
            await page.Page.Keyboard.PressAsync(key);
            await AssertProjected(page);
        }

        Assert.Equal((-95, 75), await View(page));
    }

    [Fact]
    public async Task Arrow_keys_stop_at_the_poles_and_home_brings_the_first_view_back()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        double scale = await page.Ask<double>("Number(stage.dataset.scale)");
        await page.Page.FocusAsync("#stage");
        for (int i = 0; i < 40; i++)
        {
            await page.Page.Keyboard.PressAsync("ArrowDown");
        }

        Assert.Equal((-90, -90), await View(page));
        await page.Page.Keyboard.PressAsync("+");
        await page.Page.Keyboard.PressAsync("Home");
        Assert.Equal((-90, 90), await View(page));
        Assert.Equal(scale, await page.Ask<double>("Number(stage.dataset.scale)"));
    }

    [Fact]
    public async Task Keys_on_the_picture_leave_the_time_alone_and_space_still_plays()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        double time = await page.Time();
        await page.Page.FocusAsync("#stage");
        await page.Page.Keyboard.PressAsync("ArrowRight");
        await page.Page.Keyboard.PressAsync("Home");
        Assert.Equal(time, await page.Time());

        await page.Page.Keyboard.PressAsync("Space");
        Assert.Equal("Pause", await page.Text("play"));
    }

    [Fact]
    public async Task Focus_of_the_picture_is_visible_and_says_what_the_keys_do()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        while (await page.Ask<string>("document.activeElement.id") != "stage")
        {
            await page.Page.Keyboard.PressAsync("Tab");
        }

        Assert.True(await page.Ask<bool>("parseFloat(getComputedStyle(stage).outlineWidth) >= 2 && getComputedStyle(stage).outlineStyle !== 'none'"));
        Assert.Contains("arrow keys", await page.Ask<string>("document.getElementById(stage.getAttribute('aria-describedby')).textContent"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dragging_turns_the_view()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.ClickAsync("[data-view='side']");
        BoundingBox box = (await (await page.Page.QuerySelectorAsync("#stage"))!.BoundingBoxAsync())!;
        await page.Page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Page.Mouse.DownAsync();
        await page.Page.Mouse.MoveAsync(box.X + (box.Width / 2) + (box.Width / 6), box.Y + (box.Height / 2) + (box.Height / 9));
        await page.Page.Mouse.UpAsync();
        await page.Page.Mouse.MoveAsync(box.X, box.Y);

        // The whole width is half a turn; the picture follows the hand: to the right, and down, which looks from above.
        (double azimuth, double elevation) = await View(page);
        Assert.Equal(-120, azimuth, 0.5);
        Assert.Equal(20, elevation, 0.5);
    }

    [Fact]
    public async Task Finger_that_moves_sideways_turns_the_view_and_one_that_moves_up_scrolls_the_page()
    {
        await using OpenPage page = await chromium.OpenAsync(_html, width: 390);

        // The style lets upright moves scroll; sideways ones come to the page's own script.
        Assert.Equal("pan-y", await page.Ask<string>("getComputedStyle(stage).touchAction"));
        IElementHandle stage = (await page.Page.QuerySelectorAsync("#stage"))!;
        await stage.ScrollIntoViewAsync();
        BoundingBox box = (await stage.BoundingBoxAsync())!;
        decimal middle = box.Y + (box.Height / 2);
        await page.Page.Touchscreen.TouchStartAsync(box.X + (box.Width * 0.3m), middle);
        await page.Page.Touchscreen.TouchMoveAsync(box.X + (box.Width * 0.5m), middle);
        await page.Page.Touchscreen.TouchMoveAsync(box.X + (box.Width * 0.7m), middle);
        await page.Page.Touchscreen.TouchEndAsync();

        // 0.4 of the width is 72°, less what the browser takes to tell a move from a tap.
        Assert.InRange((await View(page)).Azimuth, -90 - 73, -90 - 45);
        Assert.Empty(page.Complaints);
    }

    [Theory]
    [InlineData("axis", 90)]
    [InlineData("quarter", 25)]
    [InlineData("side", 0)]
    public async Task Named_views_are_buttons_that_say_which_is_on(string view, double elevation)
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.ClickAsync($"[data-view='{view}']");

        Assert.Equal(elevation, (await View(page)).Elevation);
        Assert.Equal([view], await page.Ask<string[]>("[...document.querySelectorAll('[data-view][aria-pressed=true]')].map(b => b.dataset.view)"));
        await AssertProjected(page);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1400)]
    public async Task Scale_bar_is_as_long_as_it_says_at_every_zoom(int width)
    {
        await using OpenPage page = await chromium.OpenAsync(_html, width);
        for (int i = 0; i < 6; i++)
        {
            await page.Page.ClickAsync("#zoom-in");
            double metres = await page.Ask<double>("parseFloat(document.getElementById('scale-length').textContent)");
            double drawn = await page.Ask<double>("document.getElementById('scale-bar').getBBox().width / Number(stage.dataset.scale)");
            Assert.Equal(metres, drawn, 1e-3 * metres);
            Assert.True(await page.Ask<bool>("document.getElementById('scale-bar').getBBox().width <= stage.clientWidth / 4"));
        }
    }

    [Fact]
    public async Task Picture_keeps_to_its_window_when_that_becomes_narrow()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.SetViewportAsync(new ViewPortOptions { Width = 390, Height = 900 });
        await page.Page.WaitForExpressionAsync("scene.viewBox.baseVal.width === stage.clientWidth && stage.clientWidth < 390");
        await AtEnd(page);
        await AssertProjected(page);
    }

    [Fact]
    public async Task Cord_behind_the_hub_is_painted_before_it()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.ClickAsync("[data-view='side']");
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("Home");

        // From the side, in the direction of −y: of two weights on opposite sides the one with y < 0 is the nearer, wherever
        // they are while they unwind.
        for (int i = 0; i < 40; i++)
        {
            await page.Page.Keyboard.PressAsync("ArrowRight");
            double time = await page.Time();
            UnwindingFrame frame = SampleReport.Full.Unwinding!.Frames.MinBy(f => Math.Abs(f.Time - time))!;
            double y = SampleReport.Full.Unwinding!.Root(frame, 0).Y.Meters;
            if (Math.Abs(y) > 0.1 * SampleReport.Motion.Radius)
            {
                string[] layers = await page.Ask<string[]>("[1, 2].map(n => document.getElementById(`flight-${n}`).parentNode.id)");
                Assert.Equal(y < 0 ? ["front", "behind"] : ["behind", "front"], layers);
            }
        }
    }

    private static async Task AtEnd(OpenPage page)
    {
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("End");
    }

    private static async Task<(double Azimuth, double Elevation)> View(OpenPage page) =>
        (await page.Ask<double>("Number(stage.dataset.azimuth)"), await page.Ask<double>("Number(stage.dataset.elevation)"));

    /// <summary>Parallel projection, derived here on its own: turn the room by minus the azimuth about z, then tip it by the elevation.</summary>
    private static async Task AssertProjected(OpenPage page)
    {
        double time = await page.Time();
        CordFrame cord = SampleReport.Full.Unwinding!.Frames.MinBy(f => Math.Abs(f.Time - time))!.Cords[0];
        (double azimuth, double elevation) = await View(page);
        (double sinA, double cosA) = Math.SinCos(azimuth * Math.PI / 180);
        (double sinE, double cosE) = Math.SinCos(elevation * Math.PI / 180);
        (double x, double y, double z) = (cord.Weight.X.Meters, cord.Weight.Y.Meters, cord.Weight.Z.Meters);
        double near = (x * cosA) + (y * sinA);
        double across = (y * cosA) - (x * sinA);
        double up = (z * cosE) - (near * sinE);

        // The poster's instant is between two frames, which are 0.02 m apart at most.
        double allowed = time == SampleReport.Full.Unwinding!.Frames[^1].Time ? OnFrame : 0.03;
        Assert.Equal(across, await page.Metres("weight-1", "cx"), allowed);
        Assert.Equal(-up, await page.Metres("weight-1", "cy"), allowed);
    }
}
