using System.Text.Json.Nodes;

namespace Momentum.Tool.Tests.Answers;

/// <summary>The motion in three dimensions as the tool answers with it.</summary>
public sealed class WholeMotionTests
{
    private const string Balanced = "xy = \"0.04 kg*m^2\", xz = \"-0.02 kg*m^2\", yz = \"0.01 kg*m^2\" }";

    /// <summary>Balanced, without wobble, cord mass and stretch, both computations are of one motion.</summary>
    [Fact]
    public void Without_what_the_plane_leaves_out_the_whole_motion_is_the_planar_one()
    {
        JsonNode answer = Size(SampleCase.Ideal.Replace("final_rate  = \"0 rpm\"", "final_rate = \"10 rpm\"", StringComparison.Ordinal));

        // Steps of 1e-12 over some hundred steps.
        double initial = Number(answer["initial_spin_rad_s"]);
        Assert.Equal(Number(answer["final_spin_rad_s"]), Whole(answer, "final_spin_rad_s"), 1e-9 * initial);
        Assert.Equal(1, Whole(answer, "peak_tension_cord_1_n") / Number(answer["peak_cord_tension_n"]), 1e-6);
        Assert.Equal(Whole(answer, "peak_tension_cord_1_n"), Whole(answer, "peak_tension_cord_2_n"), 1e-6);
        Assert.Equal(1, Whole(answer, "let_go_speed_weight_1_m_s") / Number(answer["weight_let_go_speed_m_s"]), 1e-9);
        Assert.Equal(1, Whole(answer, "let_go_energy_weight_2_j") / Number(answer["weight_let_go_energy_j"]), 1e-9);
        Assert.Equal(0, Whole(answer, "nutation_after_rad"), 1e-9);
        JsonNode letGo = answer["whole_motion"]!["events"]!.AsArray().Last(e => e!["event"]!.GetValue<string>() == "let_go")!;
        Assert.Equal(Number(answer["let_go_time_s"]), Number(letGo["time_s"]), 1e-8);
        Assert.InRange(Whole(answer, "ledger_closure"), 0, 1e-11);
    }

    [Fact]
    public void The_wobble_before_release_is_the_one_stated()
    {
        JsonNode answer = Size(SampleCase.Exact);

        // The body wobbles as a whole, so that the largest angle before release is that of the first instant.
        Assert.Equal(0.5 * Math.PI / 180, Whole(answer, "nutation_before_rad"), 1e-12);
        Assert.True(Whole(answer, "nutation_after_rad") > 10 * Whole(answer, "nutation_before_rad"), "spin goes and transverse rates stay");
        Assert.True(Whole(answer, "transverse_rate_after_rad_s") > 0);
        Assert.Empty(answer["not_used_yet"]!.AsArray());
    }

    [Fact]
    public void The_residual_spin_is_split_by_what_the_case_states()
    {
        JsonNode whole = Size(With(SampleCase.Exact, "[despin.cord]\n", "[despin.cord]\nstiffness = \"85 kN\"\ndamping = \"0.02\"\n"))["whole_motion"]!;

        double sum = Number(whole["final_spin_by_causes_together_rad_s"]) + Number(whole["final_spin_ideal_rad_s"]);
        foreach (string cause in new[] { "wobble", "imbalance", "cord_stretch", "cord_mass" })
        {
            sum += Number(whole[$"final_spin_by_{cause}_rad_s"]);
        }

        Assert.Equal(Number(whole["final_spin_rad_s"]), sum, 1e-12);
        Assert.NotEqual(0, Number(whole["final_spin_by_cord_stretch_rad_s"]));
        Assert.Null(whole["final_spin_by_rig_rad_s"]);
    }

    /// <summary>Which letter the spin axis has is of no physical meaning.</summary>
    [Theory]
    [InlineData("x", "xx = \"17.5 kg*m^2\", yy = \"14.2 kg*m^2\", zz = \"14.6 kg*m^2\", xy = \"-0.02 kg*m^2\", xz = \"0.01 kg*m^2\", yz = \"0.04 kg*m^2\"", "[\"250 mm\", \"0 mm\", \"0 mm\"]")]
    [InlineData("y", "xx = \"14.6 kg*m^2\", yy = \"17.5 kg*m^2\", zz = \"14.2 kg*m^2\", xy = \"0.01 kg*m^2\", xz = \"0.04 kg*m^2\", yz = \"-0.02 kg*m^2\"", "[\"0 mm\", \"250 mm\", \"0 mm\"]")]
    public void The_spin_axis_may_have_any_letter(string axis, string inertia, string centre)
    {
        string turned = SampleCase.Exact
            .Replace("spin_axis     = \"z\"", $"spin_axis = \"{axis}\"", StringComparison.Ordinal)
            .Replace("xx = \"14.2 kg*m^2\", yy = \"14.6 kg*m^2\", zz = \"17.5 kg*m^2\", " + Balanced, inertia + " }", StringComparison.Ordinal)
            .Replace("[\"0 mm\", \"0 mm\", \"250 mm\"]", centre, StringComparison.Ordinal);
        JsonNode expected = Size(SampleCase.Exact);
        JsonNode answer = Size(turned);

        string[] components = [.. "xyz".Select(axis => $"angular_momentum_after_{axis}_kg_m2_s")];
        foreach (string key in (string[])["final_spin_rad_s", "nutation_before_rad", "nutation_after_rad", "transverse_rate_after_rad_s", "angular_momentum_tilt_after_rad", .. components])
        {
            // The same motion in other axes rounds differently; nutation near zero spin magnifies the ledger's 1e-11 some hundred times.
            Assert.Equal(Whole(expected, key), Whole(answer, key), 1e-8);
        }
    }

    [Fact]
    public void A_case_with_only_the_spin_moment_has_no_whole_motion_and_says_why()
    {
        string text = With(SampleCase.Text.Replace("120 kg +/- 0.5 %", "120 kg", StringComparison.Ordinal), "xx = \"14.2 kg*m^2\", yy = \"14.6 kg*m^2\", ", "").Replace(", " + Balanced, " }", StringComparison.Ordinal);
        Invocation size = Invocation.WithInput(With(text, "cord_safety_factor = \"> 3\"", "nutation = \"< 5 deg\""), "size", "-", "--json");

        Assert.Null(size.Json["whole_motion"]);
        JsonNode wobble = size.Json["requirements"]!.AsArray().Single(r => r!["name"]!.GetValue<string>() == "nutation")!;
        Assert.Null(wobble["met"]);
        Assert.Contains("only the moment of inertia about the spin axis is stated", wobble["note"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains(size.Json["warnings"]!.AsArray(), w => w!["message"]!.GetValue<string>().Contains("nutation, cord_plane_offset, deck_edge, stiffness and damping have no effect", StringComparison.Ordinal));

        Invocation run = Invocation.WithInput(text, "run", "-", "--whole");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains("--whole: only the moment of inertia about the spin axis is stated", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_history_of_the_whole_motion_ends_where_the_answer_does()
    {
        Invocation run = Invocation.WithInput(SampleCase.Exact, "run", "-", "--whole", "--samples", "50", "--json");
        JsonNode history = run.Json["history"]!;
        double[] Column(string name) => [.. history[name]!.AsArray().Select(Number)];

        Assert.Equal(Whole(run.Json, "final_spin_rad_s"), Column("spin_rad_s")[^1]);
        Assert.Contains(history["event"]!.AsArray(), e => e!.GetValue<string>().Contains("let go 2", StringComparison.Ordinal));
        Assert.Equal("weight released 1; weight released 2", history["event"]![0]!.GetValue<string>());
        Assert.Equal("unwinding", history["phase"]![1]!.GetValue<string>());
        Assert.Equal("let go", history["phase"]!.AsArray()[^1]!.GetValue<string>());

        // In space a weight flies on as fast as it was let go.
        Assert.Equal(1, Column("weight_1_speed_m_s")[^1] / Whole(run.Json, "let_go_speed_weight_1_m_s"), 1e-12);

        // The quaternion is written with the digits of a unit one.
        Assert.All(Enumerable.Range(0, Column("time_s").Length), i =>
            Assert.Equal(1, "xyzw".Sum(c => Math.Pow(Column($"attitude_{c}")[i], 2)), 1e-12));

        double[] later = [.. Invocation.WithInput(SampleCase.Exact, "run", "-", "--whole", "--samples", "2", "--until", "4 s", "--json").Json["history"]!["time_s"]!.AsArray().Select(Number)];
        Assert.Equal(4, later[^1]);
    }

    [Fact]
    public void A_limit_on_nutation_is_judged_and_warned_of()
    {
        Invocation run = Invocation.WithInput(SampleCase.Exact.Replace("cord_safety_factor = \"> 3\"", "nutation = \"< 5 deg\"\ntransverse_rate = \"< 2 rpm\"", StringComparison.Ordinal), "size", "-", "--json");

        Assert.Equal(1, run.ExitCode);
        JsonNode[] judged = [.. run.Json["requirements"]!.AsArray().Select(r => r!)];
        Assert.False(judged.Single(r => r["name"]!.GetValue<string>() == "nutation")["met"]!.GetValue<bool>());
        Assert.True(judged.Single(r => r["name"]!.GetValue<string>() == "transverse_rate")["met"]!.GetValue<bool>());
        Assert.Contains(run.Json["warnings"]!.AsArray(), w => w!["message"]!.GetValue<string>().Contains("nutation angle reaches", StringComparison.Ordinal));
    }

    [Fact]
    public void Requirements_are_judged_over_cases_in_three_dimensions_wherever_the_tensor_is_known()
    {
        JsonNode answer = Size(With(SampleCase.Text, "cord_safety_factor = \"> 3\"", "nutation = \"< 90 deg\"\ntransverse_rate = \"< 1 rpm\""));
        JsonNode spread = answer["dispersion"]!;
        JsonNode[] judged = [.. answer["requirements"]!.AsArray().Select(r => r!)];

        Assert.InRange(spread["cases"]!.GetValue<int>(), 100, 2500);
        Assert.Equal("in three dimensions, each cord in 4 pieces", spread["model"]!.GetValue<string>());
        Assert.All(judged, r => Assert.Contains("computed in three dimensions, each cord in 4 pieces", r["note"]!.GetValue<string>(), StringComparison.Ordinal));
        Assert.Equal(Number(spread["transverse_rate_at_share_rad_s"]), Number(judged.Single(r => r["name"]!.GetValue<string>() == "transverse_rate")["value"]));
        Assert.Equal(Number(spread["nutation_at_share_rad"]), Number(judged.Single(r => r["name"]!.GetValue<string>() == "nutation")["value"]));
        Assert.Equal(Number(spread["spin_magnitude_at_share_rad_s"]), Number(judged.Single(r => r["name"]!.GetValue<string>() == "final_rate")["value"]));
    }

    [Fact]
    public void Heavy_cords_scatter_about_their_own_nominal_motion()
    {
        JsonNode answer = Size(SampleCase.Text);

        // One straight piece in place of four would shift all cases by some 0.02 rad/s.
        double error = 4 * Number(answer["dispersion"]!["final_spin_standard_deviation_rad_s"]) / Math.Sqrt(100);
        Assert.Equal(Whole(answer, "final_spin_rad_s"), Number(answer["dispersion"]!["final_spin_mean_rad_s"]), error);
    }

    [Fact]
    public void A_limit_that_too_few_cases_have_a_figure_for_is_missed_without_one()
    {
        // One in fifteen cases would let go past the other tangent, where the cord wraps back.
        string text = With(SampleCase.Text, "let_go      = \"radial\"", "let_go      = \"radial\"\nlet_go_error = \"60 deg\"")
            .Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal).Replace("share = \"90 %\"", "share = \"99 %\"", StringComparison.Ordinal);
        Invocation run = Invocation.WithInput(text, "size", "-", "--json");

        Assert.Equal(1, run.ExitCode);
        JsonNode rate = run.Json["requirements"]!.AsArray().Single(r => r!["name"]!.GetValue<string>() == "final_rate")!;
        Assert.Null(rate["value"]);
        Assert.False(rate["met"]!.GetValue<bool>());
        Assert.Equal(1, Invocation.WithInput(text, "size", "-").ExitCode);
    }

    /// <summary>Bearing friction takes spin away that the weights were sized to take: the rig ends below zero.</summary>
    [Fact]
    public void On_a_bench_friction_takes_its_part()
    {
        const string Bench = "\n[bench]\nfriction_torque = \"0.8 N*m\"\ncord_height = \"1.1 m\"\nwall_distance = \"9 m\"\n";
        JsonNode answer = Size(SampleCase.Ideal + Bench);

        Assert.True(Whole(answer, "final_spin_rad_s") < 0);
        Assert.Equal(Whole(answer, "final_spin_rad_s"), Whole(answer, "final_spin_by_rig_rad_s"), 1e-9);
        Assert.True(Whole(answer, "bearing_work_j") < 0);
        Assert.InRange(Whole(answer, "ledger_closure"), 0, 1e-11);

        Invocation sunk = Invocation.WithInput(SampleCase.Ideal + Bench.Replace("1.1 m", "0.2 m", StringComparison.Ordinal), "check", "-");
        Assert.Equal(2, sunk.ExitCode);
        Assert.Contains("bench.cord_height", sunk.Error, StringComparison.Ordinal);
        Assert.Contains("would then be in the floor", sunk.Error, StringComparison.Ordinal);
    }

    /// <summary>
    /// A rig spun up by hand: nobody knows the rate. A design for no spin leaves none whatever the rate, until friction
    /// takes what the weights were to take.
    /// </summary>
    [Fact]
    public void A_rig_spun_by_hand_ends_at_rest_whatever_its_rate_but_for_friction()
    {
        string byHand = With(SampleCase.Ideal, "rate   = \"50 rpm\"", "rate   = \"50 rpm +/- 25 rpm max\"");
        JsonNode smooth = Size(byHand + "\n[bench]\ngravity = \"0 m/s^2\"\n")["dispersion"]!;
        JsonNode rubbing = Size(byHand + "\n[bench]\ngravity = \"0 m/s^2\"\nfriction_torque = \"0.8 N*m\"\n")["dispersion"]!;

        // The steps of a case are 1e-6; the slowest start has 2.6 rad/s.
        Assert.Equal(0, Number(smooth["final_spin_mean_rad_s"]), 1e-5);
        Assert.Equal(0, Number(smooth["final_spin_standard_deviation_rad_s"]), 1e-5);
        Assert.True(Number(rubbing["final_spin_mean_rad_s"]) < -0.01);
        Assert.True(Number(rubbing["final_spin_standard_deviation_rad_s"]) > 1e-3);
    }

    /// <summary>The sample wobbles by half a degree, so that its cords come some millimetres out of their plane.</summary>
    [Theory]
    [InlineData("1 mm", true)]
    [InlineData("-1 mm", true)]
    [InlineData("30 mm", false)]
    public void A_deck_edge_within_the_cords_swing_is_reported(string height, bool touched)
    {
        JsonNode answer = Size(With(SampleCase.Text, "let_go      =", $"deck_edge = {{ radius = \"430 mm\", height = \"{height}\" }}\nlet_go      ="));

        Assert.Equal(touched, answer["whole_motion"]!["events"]!.AsArray().Any(e => e!["event"]!.GetValue<string>() == "cord_touches_deck_edge"));
        Assert.Equal(touched, answer["warnings"]!.AsArray().Any(w => w!["message"]!.GetValue<string>().Contains("touches the deck's edge", StringComparison.Ordinal)));
    }

    private static string With(string text, string piece, string replacement)
    {
        Assert.Contains(piece, text, StringComparison.Ordinal);
        return text.Replace(piece, replacement, StringComparison.Ordinal);
    }

    private static JsonNode Size(string text)
    {
        Invocation run = Invocation.WithInput(text, "size", "-", "--json");
        Assert.True(run.ExitCode is 0 or 1, run.Error);
        return run.Json;
    }

    private static double Whole(JsonNode answer, string key) => Number(answer["whole_motion"]![key]);

    private static double Number(JsonNode? value) => value!.GetValue<double>();
}
