using System.Globalization;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Composing;
using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tool.Tests.Report;

/// <summary>What the page says and shows of the motion in three dimensions.</summary>
[Collection(BrowserTests.Name)]
public sealed class WholeMotionTests(Chromium chromium)
{
    private static readonly DeploymentResult _result = SampleDeployment.Unbalanced().Deploy();
    private static readonly WholeMotionSection _section = SectionOf(SampleDeployment.Unbalanced());
    private static readonly DespinReport _report = ReportOf(SampleDeployment.Unbalanced());
    private static readonly string _html = HtmlReport.Render(_report);

    [Fact]
    public void Wobble_is_that_of_the_result_before_during_and_after()
    {
        foreach ((WobbleRow row, Wobble wobble) in _section.Wobble.Zip([_result.Before, _result.During, _result.After]))
        {
            Assert.Equal(wobble.LargestNutation.Degrees, row.Nutation.Value, 1e-12);
            Assert.Equal(wobble.LargestTransverseRate.RevolutionsPerMinute, row.TransverseRate.Value, 1e-9);
            Assert.Equal(wobble.MomentumTilt.Degrees, row.Tilt!.Value.Value, 1e-12);
        }

        Assert.Equal(3, _section.Wobble.Count);

        // The weights are free at once: the first stretch ends at the start, where the third axis is the spin axis.
        double third = Math.Cos(_result.At(Duration.Zero).NutationAngle.Radians);
        Assert.Equal(third, double.Parse(_section.Wobble[0].Direction.Split(", ")[2], CultureInfo.InvariantCulture), 5.1e-5);
    }

    [Fact]
    public void Parts_of_the_final_spin_rate_add_up_to_it()
    {
        SpinPart whole = _section.FinalSpin[^1];

        Assert.True(whole.IsWhole);
        Assert.Equal(_result.FinalSpin.RevolutionsPerMinute, whole.Value, 1e-9);
        Assert.Equal(whole.Value, _section.FinalSpin.SkipLast(1).Sum(p => p.Value), 1e-9);
        Assert.Contains(_section.FinalSpin, p => p.Name == "Wobble before release");
        Assert.Contains(_section.FinalSpin, p => p.Name == "Weights released late");
    }

    [Fact]
    public void Ledger_as_shown_balances_line_by_line()
    {
        // Momenta: start = gone + left in every component. Energy: the sums likewise. To what the library lets stand, 1e-11, of the
        // scale of each.
        foreach (LedgerGroup group in _section.Ledger)
        {
            double scale = group.Rows.Max(r => Math.Max(Math.Abs(r.Start?.Value ?? 0), Math.Abs(r.Gone?.Value ?? 0)));
            foreach (LedgerRow row in group.Rows.Where(r => r.Start is not null && r.Gone is not null))
            {
                Assert.Equal(row.Start!.Value.Value, row.Gone!.Value.Value + row.End!.Value.Value, 1e-10 * scale);
            }
        }

        LedgerGroup energy = _section.Ledger[^1];
        LedgerRow sum = energy.Rows[^1];
        Assert.True(sum.IsSum);
        Assert.Equal(sum.Start!.Value.Value, energy.Rows.SkipLast(1).Sum(r => r.Start?.Value ?? 0), 1e-9 * sum.Start.Value.Value);
        Assert.Equal(sum.Gone!.Value.Value, energy.Rows.SkipLast(1).Sum(r => r.Gone?.Value ?? 0), 1e-9 * sum.Start.Value.Value);
        Assert.All(_section.Ledger, g => Assert.Contains("closes to", g.Closure, StringComparison.Ordinal));
    }

    [Fact]
    public void Rig_has_a_ledger_of_what_a_bearing_leaves_and_says_where_the_weights_land()
    {
        WholeMotionSection rig = SectionOf(SampleDeployment.OnRig);

        Assert.Equal(["kg·m²/s", "J"], rig.Ledger.Select(g => g.Unit));
        Assert.True(rig.Ledger[^1].Rows.Single(r => r.Name == "bearing friction").Gone!.Value.Value > 0);
        Assert.Equal([1, 2], rig.Landings.Select(l => l.Cord));
        Assert.Empty(rig.Wobble);
        Assert.All(rig.Landings, l => Assert.Matches("^(floor|wall), ", l.Place));
        Assert.Empty(_section.Landings);
    }

    /// <summary>
    /// A hub brought to rest has given the weights all its energy: N m v²/2 = (I + N m R²) Ω²/2. And the angular momentum,
    /// (I + N m R²) Ω, is then that of weights of speed v at R + L, straight out. Own derivation from the two conservation laws.
    /// </summary>
    [Fact]
    public void Weights_of_a_hub_brought_to_rest_leave_with_all_its_energy()
    {
        PlanarMotion planar = SampleDeployment.Planar;
        DeploymentResult result = SampleDeployment.PlanarAndSymmetric.Deploy();
        double inertia = planar.Inertia + (planar.Weights * planar.Radius * planar.Radius);
        double energy = 0.5 * inertia * planar.InitialSpin * planar.InitialSpin / 2;
        double speed = Math.Sqrt(2 * energy / (planar.Weights / 2));
        Assert.Equal(inertia * planar.InitialSpin, planar.Weights * speed * (planar.Radius + planar.Length), 1e-9 * inertia * planar.InitialSpin);

        WholeMotionSection section = SectionOf(SampleDeployment.PlanarAndSymmetric);
        Assert.Equal([1, 2], section.Departures.Select(l => l.Cord));
        Assert.All(section.Departures, l =>
        {
            Assert.Equal(speed, l.Speed!.Value.Value, 1e-9 * speed);
            Assert.Equal(energy, l.Energy!.Value.Value, 1e-9 * energy);
        });
        Assert.Contains("inertial", section.SpeedsAreOf, StringComparison.Ordinal);

        // The curve: in the closed form the tangent point runs on at θ' = 2 Ω c/(c + φ²), φ = Ω t, and the weight, φ R along the
        // tangent from it, at R √((φ θ')² + (θ' − Ω)²).
        LineChart chart = WholePictures.Of(result).Charts(Planar()).Single(c => c.Title == "Speed of the weights");
        ChartSeries each = Assert.Single(chart.Series);
        double c = 1 + (planar.Inertia / (planar.Weights * planar.Radius * planar.Radius));
        foreach ((double time, double drawn) in each.X.Zip(each.Y))
        {
            double phi = planar.InitialSpin * time;
            double turning = 2 * planar.InitialSpin * c / (c + (phi * phi));
            double expected = time <= planar.UnwindingEnds ? planar.Radius * double.Hypot(phi * turning, turning - planar.InitialSpin) : speed;
            if (time <= planar.UnwindingEnds || time >= result.Departures[0].Time.Seconds)
            {
                Assert.Equal(expected, drawn, 1e-8 * speed);
            }
        }

        ChartMark mark = Assert.Single(chart.Marks);
        Assert.Equal((result.Departures[0].Time.Seconds, speed), (mark.X, mark.Y), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-12 && Math.Abs(a.Item2 - b.Item2) < 1e-9 * speed);
    }

    [Fact]
    public void Speed_on_a_rig_is_relative_to_the_room_and_drawn_until_the_weight_lands()
    {
        DeploymentResult result = SampleDeployment.OnRig.Deploy();
        LineChart chart = WholePictures.Of(result).Charts(Planar()).Single(c => c.Title == "Speed of the weights");
        Landing landing = result.Landings[0];

        Assert.Contains("relative to the room", chart.Y.Name, StringComparison.Ordinal);
        Assert.Contains("relative to the room", SectionOf(SampleDeployment.OnRig).SpeedsAreOf, StringComparison.Ordinal);
        Assert.Equal(landing.Time.Seconds, chart.Series[0].X[^1]);
        Assert.Equal(landing.Speed.MetersPerSecond, chart.Series[0].Y[^1], 1e-9 * landing.Speed.MetersPerSecond);
    }

    [Fact]
    public async Task Table_states_speed_and_energy_of_each_weight_at_let_go()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        string[] cells = await page.Ask<string[]>("[...document.querySelectorAll('.letgos tbody tr')].map(r => [...r.cells].map(c => c.textContent.replaceAll('\u00a0', ' ')).join('|'))");
        string stuck = HtmlReport.Render(ReportOf(SampleDeployment.Stuck));

        Assert.Equal(
            _result.Departures.Select(l => $"{l.Cord + 1}|{new Figure(l.Time.Seconds, "s", 3)}|{new Figure(l.Velocity.Magnitude.MetersPerSecond, "m/s")}|{new Figure(l.Energy.Joules, "J")}".Replace('\u00a0', ' ')),
            cells);
        Assert.Contains("does not let go", stuck, StringComparison.Ordinal);
    }

    [Fact]
    public void Tension_is_drawn_no_higher_than_the_peak_that_is_stated()
    {
        // Of a piece that has just left the drum the tension has few digits, and its first value may be any.
        DeploymentResult result = SampleDeployment.Heavy.Deploy();
        LineChart chart = WholePictures.Of(result).Charts(Planar()).Single(c => c.Title == "Cord tension");

        Assert.All(chart.Series.Zip(result.PeakTensions), c => Assert.InRange(c.First.Y.Max(), 0, c.Second.Tension.Newtons));
    }

    [Fact]
    public void Events_of_both_cords_at_once_are_one_and_others_name_their_cord()
    {
        string[] late = [.. _section.Events.Select(e => e.Words)];
        string[] together = [.. SectionOf(SampleDeployment.PlanarAndSymmetric).Events.Select(e => e.Words)];

        Assert.Contains("Cord 1: weight released", late);
        Assert.Contains("Cord 2: weight released", late);
        Assert.Contains("Cords 1 and 2: weight released", together);
        Assert.Contains("Cords 1 and 2: let go of the hub", together);
        Assert.Equal("End of the computation", together[^1]);
        Assert.Equal(
            ["Cords 1 and 2: weight released", "Cords 1 and 2: fully unwound, now hinging about the end on the hub", "Cords 1 and 2: let go of the hub", "End of the computation"],
            SectionOf(SampleDeployment.Tangent).Events.Select(e => e.Words));
    }

    [Fact]
    public void What_sticks_is_said_and_a_cord_still_on_is_no_after()
    {
        WholeMotionSection stuck = SectionOf(SampleDeployment.Stuck);

        Assert.Contains(stuck.Events, e => e.Words.StartsWith("Cord 1: jammed on the drum", StringComparison.Ordinal));
        Assert.Equal("At the end, a cord still on", stuck.Wobble[^1].Stretch);
        Assert.Contains(stuck.FinalSpin, p => p.Name == "Stuck cords");
    }

    [Fact]
    public async Task Weight_is_drawn_where_the_library_has_it_at_the_time_of_the_slider()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("Home");
        double reach = 0;
        for (int i = 0; i < 200; i++)
        {
            await page.Page.Keyboard.PressAsync("ArrowRight");
            if (i % 20 == 19)
            {
                double time = await page.Time();
                DeploymentState state = _result.At(Duration.FromSeconds(time));
                var centre = state.Origin + state.Attitude.Apply(_result.Deployment.Hub.CentreOfMass.FromOrigin);
                double[] place = [(state.Cords[1].Weight - centre).X.Meters, (state.Cords[1].Weight - centre).Y.Meters, (state.Cords[1].Weight - centre).Z.Meters];
                (double across, double up) = Projected(place, await page.Ask<double>("Number(stage.dataset.azimuth)"), await page.Ask<double>("Number(stage.dataset.elevation)"));
                reach = Math.Max(reach, Math.Sqrt(place.Sum(c => c * c)));

                // Straight lines between frames: 8e-4 of the reach at most, as tested without a browser.
                Assert.Equal(across, await page.Metres("weight-2", "cx"), 1e-3 * Math.Max(1, reach));
                Assert.Equal(-up, await page.Metres("weight-2", "cy"), 1e-3 * Math.Max(1, reach));
                Assert.Equal(state.NutationAngle.Degrees, await page.Ask<double>("parseFloat(document.getElementById('read-nutation').textContent)"), 0.1 + (0.03 * state.NutationAngle.Degrees));
            }
        }
    }

    [Fact]
    public async Task Read_outs_at_the_end_are_the_final_state()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("End");
        DeploymentState final = _result.FinalState;

        Assert.Equal(final.Spin.RevolutionsPerMinute, await Read(page, "read-spin"), 0.0051);
        Assert.Equal(final.TransverseRate.RevolutionsPerMinute, await Read(page, "read-transverse"), 0.0051);
        Assert.Equal(final.NutationAngle.Degrees, await Read(page, "read-nutation"), 0.051);
        Assert.Equal("gone", await page.Text("read-tension-2"));
    }

    [Fact]
    public async Task Both_cords_have_their_own_tension_beside_the_picture()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);
        DeploymentState state = _result.At(Duration.FromSeconds(await page.Time()));
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal(state.Cords[i].Tension.Newtons, await Read(page, $"read-tension-{i + 1}"), 0.02 * state.Cords[i].Tension.Newtons);
            Assert.Equal(state.Cords[i].FreeLength.Meters, await Read(page, $"read-length-{i + 1}"), 0.01);
        }
    }

    [Theory]
    [InlineData(390, "light")]
    [InlineData(390, "dark")]
    [InlineData(1400, "light")]
    public async Task Page_opens_without_complaint_and_fits(int width, string scheme)
    {
        await using OpenPage page = await chromium.OpenAsync(_html, width, scheme);
        await page.Page.ClickAsync("[data-view='side']");
        string[] outside = await page.Ask<string[]>("""
            [...document.querySelectorAll('body *:not(.skip)')]
              .filter(e => !e.parentElement.closest('svg'))
              .filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && (r.left < -0.5 || r.right > document.documentElement.clientWidth + 0.5); })
              .map(e => e.tagName + ' ' + e.className + ' ' + e.textContent.slice(0, 40))
            """);

        Assert.Empty(outside);
        Assert.Empty(page.Complaints);
        Assert.Empty(page.Requests);
        Assert.False(await page.Ask<bool>("document.body.innerHTML.includes('NaN')"));
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task Text_and_curves_stand_out_from_their_ground(string scheme)
    {
        // Limits: Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 and 1.4.11.
        await using OpenPage page = await chromium.OpenAsync(_html, scheme: scheme);

        Assert.Empty(await page.Page.EvaluateFunctionAsync<string[]>(PageTests.Contrast, "text", 4.5));
        Assert.Empty(await page.Page.EvaluateFunctionAsync<string[]>(PageTests.Contrast, "curve", 3));
    }

    [Fact]
    public async Task Every_picture_and_control_has_words_and_ids_are_unique()
    {
        await using OpenPage page = await chromium.OpenAsync(_html);

        Assert.Empty(await page.Ask<string[]>("[...document.querySelectorAll('svg')].filter(s => s.getAttribute('aria-hidden') !== 'true' && (s.getAttribute('aria-label') ?? '').length <= 30).map(s => s.outerHTML.slice(0, 80))"));
        Assert.Empty(await page.Ask<string[]>("[...document.querySelectorAll('[id]')].map(e => e.id).filter((id, i, all) => all.indexOf(id) !== i)"));
    }

    [Fact]
    public async Task Floor_and_wall_of_a_rig_are_drawn_where_they_are_and_a_cross_where_a_weight_lands()
    {
        DeploymentResult result = SampleDeployment.OnRig.Deploy();
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(ReportOf(SampleDeployment.OnRig)));
        const string Half = "(id => { const b = document.getElementById(id).getBBox(); return [b.x, b.y, b.width, b.height].map(v => v / Number(stage.dataset.scale)); })";

        // Along the axis the wall is a circle of 7 m about the bearing, which is the stage's middle; curves are drawn in pieces of 4°.
        await page.Page.ClickAsync("[data-view='axis']");
        double[] far = await page.Ask<double[]>($"{Half}('wall-far')");
        double[] near = await page.Ask<double[]>($"{Half}('wall-near')");
        Assert.Equal(-7, Math.Min(far[0], near[0]), 0.02);
        Assert.Equal(14, Math.Max(far[1] + far[3], near[1] + near[3]) - Math.Min(far[1], near[1]), 0.04);
        Landing landing = result.Landings[0];
        double[] cross = await page.Ask<double[]>($"{Half}('landing-1')");
        Assert.Equal(landing.Place.X.Meters, cross[0] + (cross[2] / 2), 1e-2);
        Assert.Equal(-landing.Place.Y.Meters, cross[1] + (cross[3] / 2), 1e-2);

        // From the side the floor is a line 1.5 m under the bearing.
        await page.Page.ClickAsync("[data-view='side']");
        double[] floor = await page.Ask<double[]>($"{Half}('floor-above')");
        Assert.Equal(1.5, floor[1], 1e-2);
        Assert.Equal(0, floor[3], 1e-2);

        // The axis ends on the floor at the latest.
        double[] axis = await page.Ask<double[]>($"{Half}('axis-far')");
        Assert.True(axis[1] + axis[3] <= 1.5 + 1e-2, $"the axis reaches {axis[1] + axis[3]} m down");
        Assert.Contains("1.50\u00a0m below the cords", await page.Text("unwinding"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Far_side_of_the_room_is_painted_before_the_hub_and_the_near_side_after_it()
    {
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(ReportOf(SampleDeployment.OnRig)));
        string[] order = await page.Ask<string[]>("['floor-above', 'wall-far', 'hub-side', 'flight-1', 'wall-near', 'floor-grid-below'].sort((a, b) => document.getElementById(a).compareDocumentPosition(document.getElementById(b)) & 4 ? -1 : 1)");
        Assert.Equal(["floor-above", "wall-far", "hub-side"], order[..3]);
        Assert.Equal(["wall-near", "floor-grid-below"], order[^2..]);

        // Looking up from below, the floor is between the eye and the rig.
        await page.Page.ClickAsync("[data-view='side']");
        await page.Page.FocusAsync("#stage");
        await page.Page.Keyboard.PressAsync("ArrowDown");
        Assert.True(await page.Ask<bool>("document.getElementById('floor-above').getAttribute('d') === '' && document.getElementById('floor-grid-below').getAttribute('d') !== ''"));
        await page.Page.Keyboard.PressAsync("ArrowUp");
        await page.Page.Keyboard.PressAsync("ArrowUp");
        Assert.True(await page.Ask<bool>("document.getElementById('floor-above').getAttribute('d') !== '' && document.getElementById('floor-grid-below').getAttribute('d') === ''"));
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task Edge_of_the_deck_is_drawn_about_the_hub()
    {
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(ReportOf(SampleDeployment.OverDeck)));
        await page.Page.ClickAsync("[data-view='axis']");
        await page.Page.FocusAsync("#time");
        await page.Page.Keyboard.PressAsync("Home");

        // A circle of 0.6 m about the drum's axis, which the unbalance puts a few millimetres beside the middle; the hub tilts by less than 3°.
        Assert.Equal(1.2, await page.Ask<double>("document.getElementById('deck-near').getBBox().width / Number(stage.dataset.scale)"), 0.01);
        Assert.Contains("edge of its deck", await page.Text("unwinding"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Ask<int>("document.querySelectorAll('#wall-far, #floor-above').length"));
    }

    [Fact]
    public async Task Heavy_cord_bends_on_the_stage_where_the_library_has_its_joints()
    {
        DeploymentResult result = SampleDeployment.Heavy.Deploy();
        string html = HtmlReport.Render(ReportOf(SampleDeployment.Heavy));
        await using OpenPage page = await chromium.OpenAsync(html);
        await page.Page.ClickAsync("#phases li:nth-child(2) button");
        DeploymentState state = result.At(result.Events.First(e => e.Kind == DeploymentEventKind.Unwound).Time);
        Position<Inertial> centre = state.Origin + state.Attitude.Apply(result.Deployment.Hub.CentreOfMass.FromOrigin);
        Position<Inertial>[] joints = [.. state.Cords[0].Joints];
        double[] drawn = await page.Ask<double[]>("[...document.getElementById('cord-1').points].flatMap(p => [p.x, p.y]).map(v => v / Number(stage.dataset.scale))");

        Assert.Equal(3, joints.Length);
        Assert.Equal(2 * 5, drawn.Length);
        for (int i = 0; i < 3; i++)
        {
            Vector<Length, Inertial> place = joints[i] - centre;
            (double across, double up) = Projected(
                [place.X.Meters, place.Y.Meters, place.Z.Meters], await page.Ask<double>("Number(stage.dataset.azimuth)"), await page.Ask<double>("Number(stage.dataset.elevation)"));

            // The phase begins with a frame; its places are written to 0.1 mm.
            Assert.Equal(across, drawn[2 + (2 * i)], 2e-4);
            Assert.Equal(-up, drawn[3 + (2 * i)], 2e-4);
        }

        Assert.Contains("between the joints", html, StringComparison.Ordinal);
        Assert.Contains("Cords are drawn straight.", _html, StringComparison.Ordinal);
        Assert.InRange(html.Length, 50_000, 400_000);
    }

    [Theory]
    [InlineData("stuck", 1400)]
    [InlineData("rig", 1400)]
    [InlineData("rig", 390)]
    [InlineData("planar", 1400)]
    [InlineData("deck", 390)]
    [InlineData("heavy", 1400)]
    public async Task Every_kind_of_motion_has_a_page(string kind, int width)
    {
        CordDeployment deployment = kind switch
        {
            "stuck" => SampleDeployment.Stuck,
            "rig" => SampleDeployment.OnRig,
            "deck" => SampleDeployment.OverDeck,
            "heavy" => SampleDeployment.Heavy,
            _ => SampleDeployment.PlanarAndSymmetric,
        };
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(ReportOf(deployment)), width);

        Assert.Empty(page.Complaints);
        Assert.Equal(2, await page.Ask<int>("document.querySelectorAll('#stage circle[id^=weight]').length"));
        Assert.Contains("Ledger", await page.Text("whole"), StringComparison.Ordinal);
    }

    [Fact]
    public void Spin_rate_that_cannot_be_split_and_a_motion_that_is_none_are_said_to_be_so()
    {
        string unsplit = HtmlReport.Render(_report with { Whole = WholeMotionWords.Of(_result, null, Planar()) });
        string none = HtmlReport.Render(SampleReport.Full with { WhyNotWhole = "only one moment is stated" });

        Assert.Contains("Not split by cause", unsplit, StringComparison.Ordinal);
        Assert.Contains("Not computed: only one moment is stated.", none, StringComparison.Ordinal);
        Assert.Contains("href=\"#whole\"", none, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"whole\"", HtmlReport.Render(SampleReport.Full), StringComparison.Ordinal);
    }

    [Fact]
    public void Page_is_no_larger_than_a_mail_takes() => Assert.InRange(_html.Length, 50_000, 400_000);

    private static Task<double> Read(OpenPage page, string id) =>
        page.Ask<double>($"parseFloat(document.getElementById('{id}').textContent.replace('\u2212', '-'))");

    private static (double Across, double Up) Projected(double[] place, double azimuth, double elevation)
    {
        (double sinA, double cosA) = Math.SinCos(azimuth * Math.PI / 180);
        (double sinE, double cosE) = Math.SinCos(elevation * Math.PI / 180);
        double near = (place[0] * cosA) + (place[1] * sinA);
        return ((place[1] * cosA) - (place[0] * sinA), (place[2] * cosE) - (near * sinE));
    }

    private static WholeMotionSection SectionOf(CordDeployment deployment) =>
        WholeMotionWords.Of(deployment.Deploy(), deployment.ExplainFinalSpin(), Planar());

    private static DespinMotion Planar() => new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRevolutionsPerMinute(72))
        .SizeCordLength(Mass.FromKilograms(0.62), RotationalSpeed.Zero, LetGo.Radial).Deploy();

    private static DespinReport ReportOf(CordDeployment deployment)
    {
        WholePictures pictures = WholePictures.Of(deployment.Deploy());
        return SampleReport.Full with
        {
            Whole = SectionOf(deployment),
            Unwinding = pictures.Unwinding,
            Charts = [.. pictures.Charts(Planar()), SampleReport.Full.Charts[^1]],
        };
    }
}
