using System.Globalization;
using System.Security.Cryptography;
using Momentum.Cases;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Composing;
using Momentum.Cases.Report.Model;
using Momentum.Tool.Commands;

namespace Momentum.Tool.Tests.Report;

/// <summary>From a case file to the page.</summary>
[Collection(BrowserTests.Name)]
public sealed class AnswerReportTests(Chromium chromium)
{
    private const double Rpm = Math.PI / 30;

    [Fact]
    public void Unknown_of_the_case_heads_the_table_that_is_signed()
    {
        DespinReport report = Compose(Given());

        Assert.Equal("Cord length, each", report.Answers[0].Name);
        Assert.True(report.Answers[0].Solved);
        Assert.Single(report.Answers, a => a.Solved);
        Assert.Equal(PlanarMotion.RadialLengthToZero(18.4, 1.24, 0.43), report.Answers[0].Shown, 1e-9);
    }

    [Fact]
    public void Every_figure_of_the_planar_answer_is_shown_once()
    {
        Answer answer = Solve(Given());
        DespinReport report = AnswerReport.Of(answer);

        string[] planar = [.. answer.Figures.Nodes.OfType<AnswerGroup>().Where(g => g.Key.Length == 0).SelectMany(g => g.Nodes).Select(n => n.Name)];
        string[] shown = [.. report.Answers.Select(r => r.Name), .. report.Further.SelectMany(g => g.Nodes).Select(n => n.Name)];
        Assert.Equal(planar.Order(), shown.Order());
    }

    [Theory]
    [InlineData("\"radial\"")]
    [InlineData("\"tangent\"")]
    public void Frames_of_the_animation_are_those_of_an_independent_computation(string letGo)
    {
        // Both are exact while unwinding; the reference's midpoint sum over the hinging is good to 1e-5 of the time, and what a
        // weight moves in that, 5 m/s-ish by 1e-5 s, is under 1e-3 m.
        Unwinding motion = Compose(Given(letGo: letGo)).Unwinding!;
        var reference = new PlanarMotion(18.4, 1.24, 0.43, motion.Frames.Max(f => f.Cords[0].FreeLength), 72 * Rpm);
        var states = reference.ToRadial(4000);
        double letGoTime = motion.LetGo!.Value;
        foreach (UnwindingFrame frame in motion.Frames.Where(f => f.Cords[0].Attached && f.Time <= letGoTime))
        {
            var state = states.MinBy(s => Math.Abs(s.Time - frame.Time));
            double late = frame.Time - state.Time;
            Assert.Equal(state.Spin, frame.Spin * Rpm, 0.02 + Math.Abs(late * 20));
            Assert.Equal((0.43 * Math.Cos(state.Tangent)) + (state.Free * Math.Cos(state.Cord)), frame.Cords[0].Weight.X.Meters, 1e-3 + Math.Abs(late * 40));
            Assert.Equal((0.43 * Math.Sin(state.Tangent)) + (state.Free * Math.Sin(state.Cord)), frame.Cords[0].Weight.Y.Meters, 1e-3 + Math.Abs(late * 40));
            Assert.Equal(-frame.Cords[0].Weight.X.Meters, frame.Cords[1].Weight.X.Meters, 1e-9);
        }
    }

    [Fact]
    public void Free_cord_in_every_frame_has_the_free_length()
    {
        Unwinding motion = Compose(Given(letGo: "{ angle = \"120 deg\" }")).Unwinding!;
        AssertFreeCordsReachTheirWeights(motion);
    }

    [Fact]
    public void Free_spring_cord_in_every_frame_has_the_free_length_with_its_stretch()
    {
        DespinReport report = Compose(OnSprings);
        AssertFreeCordsReachTheirWeights(report.Unwinding!);

        // At let-go the cord is longer than it was made.
        Assert.True(report.Unwinding!.Frames.Last(f => f.Cords[0].Attached).Cords[0].FreeLength > 1.1 * report.Answers[0].Shown);
    }

    [Fact]
    public void Spring_cords_have_two_unknowns_a_section_and_a_caution_of_their_own()
    {
        DespinReport report = Compose(OnSprings);

        Assert.Equal(["Cord length, each", "Cord stiffness E·A, each"], report.Answers.Where(a => a.Solved).Select(a => a.Name));
        Assert.Equal(["1 % more initial spin", "1 % more spin inertia"], report.Springs!.Rows.Select(r => r.Error));
        Assert.Equal(0, report.Springs.Rows[0].Springs.Shown);
        Assert.Equal(0.144, report.Springs.Rows[0].WithoutStretch.Shown, 1e-8);
        Assert.Contains(report.Cautions, c => c.Contains("whips back", StringComparison.Ordinal));
        Assert.Contains("on spring cords of", report.Summary, StringComparison.Ordinal);
        Assert.Null(Compose(Given()).Springs);

        // The curve of the springs is flat where that without stretch rises by a tenth of what is left, either way.
        LineChart spinUp = report.Springs.SpinUp;
        Assert.Equal(14.4 * 0.2, spinUp.Series[1].Y[^1] - spinUp.Series[1].Y[0], 1e-6);
        Assert.InRange(spinUp.Series[0].Y.Max() - spinUp.Series[0].Y.Min(), 0, 0.5);
        Assert.Contains("What the spring cords forgive", HtmlReport.Render(report), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_figure_of_a_spring_design_is_shown_once()
    {
        Answer answer = Solve(OnSprings);
        DespinReport report = AnswerReport.Of(answer);

        string[] planar = [.. answer.Figures.Nodes.OfType<AnswerGroup>().Where(g => g.Key.Length == 0).SelectMany(g => g.Nodes).Select(n => n.Name)];
        string[] shown = [.. report.Answers.Select(r => r.Name), .. report.Further.SelectMany(g => g.Nodes).Select(n => n.Name)];
        Assert.Equal(planar.Order(), shown.Order());
        Assert.All(report.Checks, c => Assert.True(c.Passed, c.Name));
    }

    private static void AssertFreeCordsReachTheirWeights(Unwinding motion)
    {
        foreach (UnwindingFrame frame in motion.Frames.Where(f => f.Cords[0].Attached))
        {
            foreach ((int number, CordFrame cord) in frame.Cords.Index())
            {
                Assert.Equal(cord.FreeLength, (cord.Weight - motion.Root(frame, number)).Magnitude.Meters, 1e-9);
            }
        }
    }

    [Fact]
    public void Cord_is_wound_from_its_root_to_its_end_on_the_hub()
    {
        Unwinding motion = Compose(Given()).Unwinding!;
        double length = motion.Frames.Where(f => f.Cords[0].Attached).Max(f => f.Cords[0].FreeLength);

        Assert.All(motion.Frames.Where(f => f.Cords[0].Attached), f => Assert.All(f.Cords.Zip(motion.Drums), c =>
            Assert.Equal(length - c.First.FreeLength, c.Second.Radius * (c.Second.EndAngle - c.First.RootAngle), 1e-9)));
    }

    [Fact]
    public void Sensitivity_to_inertia_at_the_tangent_follows_the_closed_form()
    {
        // Own derivation: with K = 1 + I/(m R²) and r the final over the initial spin, dr/d(ln K) = (1 - r²)/2; here r = 0. A
        // tolerance of 0.1 % leaves a second-order part of about its square.
        Sensitivity sensitivity = Compose(Given(letGo: "\"tangent\"", inertia: "18.4 kg*m^2 +/- 0.1 %")).Sensitivity!;
        SensitivityBar bar = sensitivity.Bars.Single(b => b.Input == "vehicle.inertia.zz");
        double k = 1 + (18.4 / (1.24 * 0.43 * 0.43));
        double expected = 0.5 * 72 * 0.001 * (k - 1) / k;

        Assert.Equal(expected, bar.AtHigh, 2e-3 * expected);
        Assert.Equal(-expected, bar.AtLow, 2e-3 * expected);
    }

    [Fact]
    public void Complete_de_spin_is_not_sensitive_to_the_initial_spin()
    {
        // Common practice, and a law of the planar motion.
        SensitivityBar bar = Compose(Given()).Sensitivity!.Bars.Single(b => b.Input == "spin.rate");

        Assert.Equal(0, bar.AtLow);
        Assert.Equal(0, bar.AtHigh);
    }

    [Fact]
    public void Inputs_stand_in_file_order_with_their_tolerances_and_in_SI()
    {
        IReadOnlyList<InputRow> inputs = Compose(Given(inertia: "13.571 slug*ft^2 +/- 2 % max")).Inputs;

        Assert.Equal(
            ["vehicle.mass", "vehicle.inertia.zz", "vehicle.inertia_about", "vehicle.spin_axis", "spin.rate", "despin.hub_radius", "despin.weights", "despin.weight_mass", "despin.final_rate", "despin.let_go", "require.final_rate"],
            inputs.Select(i => i.Key));
        InputRow inertia = inputs[1];
        Assert.Equal("13.571 slug*ft^2", inertia.Given);
        Assert.Equal("± 2 %, limits", inertia.Tolerance);

        // Exact factor of slug ft² (NIST SP 811: lb, ft and standard gravity), 1.3558179483314004 kg m².
        Assert.Equal(13.571 * 1.3558179483314004, inertia.Si!.Value.Value, 1e-12);
        Assert.Equal("18.400\u00A0kg·m²", inertia.Si.ToString());
    }

    [Fact]
    public void Keys_without_effect_are_named_with_their_values_and_not_among_the_inputs()
    {
        DespinReport report = Compose(Given() + "\n[orbit]\nperigee_height = \"310 km\"\napogee_height = \"540 km\"\n");

        Assert.Equal([("orbit.perigee_height", "310 km"), ("orbit.apogee_height", "540 km")], report.Unused.Select(u => (u.Key, u.Given)));
        Assert.DoesNotContain(report.Inputs, i => i.Key.StartsWith("orbit", StringComparison.Ordinal));
    }

    [Fact]
    public void Spread_of_the_whole_motion_is_in_the_page_if_something_about_it_is_uncertain()
    {
        DespinReport exact = Compose(SampleCase.Ideal);
        DespinReport wobbling = Compose(SampleCase.Exact);

        Assert.Null(exact.WholeSpread);
        Assert.DoesNotContain("Over the cases", HtmlReport.Render(exact), StringComparison.Ordinal);
        Assert.StartsWith("100 cases", wobbling.WholeSpread!.Heading, StringComparison.Ordinal);
        Assert.Contains(wobbling.WholeSpread.Rows, r => r.Name.StartsWith("Transverse rate", StringComparison.Ordinal));
        Assert.Contains("Over the cases", HtmlReport.Render(wobbling), StringComparison.Ordinal);
    }

    [Fact]
    public void Requirement_nothing_was_computed_for_is_shown_as_not_judged()
    {
        DespinReport report = Compose(Given() + "nutation = \"< 5 deg\"\n");

        Assert.Equal(Momentum.Cases.Report.Model.Verdict.NotAllShown, report.Verdict);
        Assert.Contains("1 not shown", HtmlReport.Render(report), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"tangent\"", "0.62 kg", "0 rpm", 2)]
    [InlineData("{ angle = \"135 deg\" }", "0.62 kg", "-10 rpm", 3)]
    [InlineData("\"radial\"", "0.2 g", "0 rpm", 2)]
    [InlineData("\"radial\"", "9 kg", "30 rpm", 8)]
    public async Task Page_of_any_design_opens_without_complaint_and_fits(string letGo, string weight, string final, int weights)
    {
        string html = HtmlReport.Render(Compose(Given(letGo: letGo, weight: weight, final: final, weights: weights)));
        await using OpenPage page = await chromium.OpenAsync(html, width: 390);

        Assert.Empty(page.Complaints);
        Assert.Empty(page.Requests);
        Assert.Equal(weights, await page.Ask<int>("document.querySelectorAll('#stage circle[id^=weight]').length"));
        Assert.True(await page.Ask<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
        Assert.False(await page.Ask<bool>("document.body.innerHTML.includes('NaN')"));
    }

    [Theory]
    [InlineData("weights     = 2")]
    [InlineData("weights     = 8")]
    public async Task Case_with_a_full_tensor_is_shown_in_three_dimensions(string weights)
    {
        Answer answer = Solve(SampleCase.With("weights     = 2", weights));
        DespinReport report = AnswerReport.Of(answer);
        string html = HtmlReport.Render(report);
        await using OpenPage page = await chromium.OpenAsync(html, width: 390);

        Assert.Equal(answer.Whole!.Result.FinalSpin.RevolutionsPerMinute, report.Answers.Single(a => a.Name == "Final spin rate, in three dimensions").Shown, 1e-9);
        Assert.Equal(3, report.Checks.Count(c => c.Name.StartsWith("Whole motion", StringComparison.Ordinal) && c.Passed));
        Assert.Empty(page.Complaints);
        Assert.True(await page.Ask<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
        Assert.Equal("quarter", await page.Ask<string>("document.querySelector('[data-view][aria-pressed=true]').dataset.view"));
        Assert.InRange(html.Length, 50_000, 400_000);
    }

    [Fact]
    public async Task Rig_known_only_by_its_moment_about_the_bearing_has_its_room_too()
    {
        DespinReport report = Compose(Given() + "\n[bench]\ncord_height = \"1.2 m\"\nwall_distance = \"4.5 m\"\n");
        Unwinding motion = report.Unwinding!;
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(report));

        // Weights that are let go radially at 3.9 m come to the wall well before the animation would end without one.
        Assert.False(motion.IsWhole);
        Assert.Equal((1.2, 4.5), (motion.Room!.Floor!.Value, motion.Room.Walls!.Value));
        Assert.All(motion.Frames[^1].Cords, c => Assert.Equal(4.5, c.Weight.FromOrigin.Magnitude.Meters, 1e-9));
        Assert.True(await page.Ask<bool>("['wall-near', 'wall-far', 'floor-above'].every(id => document.getElementById(id).getAttribute('d').length > 100)"));
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task Spring_cords_fit_a_narrow_screen()
    {
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(Compose(SampleCase.OnSprings)), width: 390);

        Assert.Empty(page.Complaints);
        Assert.True(await page.Ask<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
        Assert.Equal(2, await page.Ask<int>("document.querySelectorAll('#springs tbody tr').length"));
        Assert.False(await page.Ask<bool>("document.body.innerHTML.includes('NaN')"));
    }

    [Fact]
    public void Case_with_one_moment_says_why_it_is_shown_in_the_plane()
    {
        DespinReport report = Compose(Given());

        Assert.Null(report.Whole);
        Assert.Contains("Not computed: only the moment of inertia about the spin axis is stated", HtmlReport.Render(report), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "radial")]
    [InlineData(4, "tangent")]
    public async Task Answer_and_signatures_of_a_full_case_are_one_page(int weights, string letGo)
    {
        // A4 less the margins of the style sheet, 178 mm by 263 mm, at 96 pixels an inch.
        string text = SampleCase.With("weights     = 2", FormattableString.Invariant($"weights = {weights}")).Replace("\"radial\"", $"\"{letGo}\"", StringComparison.Ordinal);
        await using OpenPage page = await chromium.OpenAsync(HtmlReport.Render(AnswerReport.Of(Solve(text))), width: 673);
        await page.Page.EmulateMediaTypeAsync(PuppeteerSharp.Media.MediaType.Print);

        Assert.InRange(await page.Ask<double>("document.getElementById('answer').getBoundingClientRect().bottom + scrollY"), 100, 994);
    }

    [Fact]
    public void Verb_report_writes_one_file_that_names_the_hash_of_the_case()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("momentum-report-");
        try
        {
            string file = Path.Combine(folder.FullName, "case.toml");
            string page = Path.Combine(folder.FullName, "report.html");
            File.WriteAllText(file, Given());
            using var output = new StringWriter(CultureInfo.InvariantCulture);
            using var error = new StringWriter(CultureInfo.InvariantCulture);

            Assert.Equal(0, CommandLine.Run(["report", file, "--output", page], new Streams(Stream.Null, output, error)));
            Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file))), File.ReadAllText(page), StringComparison.Ordinal);
            Assert.Empty(output.ToString());
            Assert.Equal(2, folder.GetFiles().Length);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Same_case_gives_the_same_bytes()
    {
        Assert.Equal(HtmlReport.Render(Compose(Given())), HtmlReport.Render(Compose(Given())));
    }

    private static string OnSprings => Given(final: "14.4 rpm", more: "[despin.cord]\nforgive_spin_up = true\ndamping = \"0.02\"");

    private static DespinReport Compose(string text) => AnswerReport.Of(Solve(text));

    private static Answer Solve(string text)
    {
        CaseReading reading = CaseReader.Read(text, "case.toml");
        Assert.Empty(reading.Problems);
        return Solver.Solve(Judgement.Of(reading));
    }

    private static string Given(
        string letGo = "\"radial\"", string inertia = "18.4 kg*m^2 +/- 2 %", string weight = "0.62 kg +/- 1 g", string final = "0 rpm", int weights = 2, string more = "") => $"""
        format = 1
        title = "Invented: Harrier-Reed upper stage"

        [vehicle]
        mass = "182 kg"
        inertia = {"{"} zz = "{inertia}" {"}"}
        inertia_about = "centre of mass"
        spin_axis = "z"

        [spin]
        rate = "72 rpm +/- 2 %"

        [despin]
        hub_radius = "430 mm"
        weights = {weights}
        weight_mass = "{weight}"
        final_rate = "{final}"
        let_go = {letGo}
        {more}

        [require]
        final_rate = "< 40 rpm"

        """;
}
