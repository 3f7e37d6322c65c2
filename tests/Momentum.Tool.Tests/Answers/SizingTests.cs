using System.Globalization;
using System.Text.Json.Nodes;
using Momentum.Tool.Commands;

namespace Momentum.Tool.Tests.Answers;

/// <summary>Case files in, figures out, against figures that were not computed by this program.</summary>
public sealed class SizingTests
{
    // Closed forms of a dozen operations: a few units in the last place; figures given to six or more digits set the rest.
    private const double Exact = 1e-12;

    /// <summary>
    /// H. D. Curtis, Orbital Mechanics for Engineering Students, exercise on two 3 kg weights released tangentially
    /// (statement read; the figures are an own derivation). The mass is ours: the planar motion does not depend on it.
    /// </summary>
    [Theory]
    [InlineData("1 rad/s", 5.9020, 0.78693)]
    [InlineData("0 rad/s", 7.2284, 0.96379)]
    public void The_textbook_hub_needs_the_cord_that_the_textbook_asks_for(string final, double cord, double time)
    {
        JsonNode answer = Size("300 kg", "300 kg*m^2", "1.5 m", $"weight_mass = \"3 kg\"\nfinal_rate = \"{final}\"", "\"tangent\"");

        Assert.Equal(cord, Number(answer, "cord_length_m"), 5e-5);
        Assert.Equal(time, Number(answer, "let_go_time_s"), 5e-6);
        Assert.Equal("cord_length", answer["solved_for"]!.GetValue<string>());
    }

    /// <summary>Own derivation: zero spin at the tangent needs L² = R² + C/m, peak tension (3√3/8) C w²/(R √c) each at t = √(c/3)/w, c = 1 + C/(m R²).</summary>
    [Fact]
    public void A_complete_de_spin_at_the_tangent_follows_the_closed_form()
    {
        JsonNode answer = Size("150 kg", "200 kg*m^2", "1 m", "weight_mass = \"2 kg\"\nfinal_rate = \"0 rpm\"", "\"tangent\"");

        const double C = 1 + (200 / (4 * 1.0));
        AssertClose(Math.Sqrt(C), answer, "cord_length_m");
        AssertClose(Math.Sqrt(C) / 5, answer, "unwind_time_s");
        AssertClose(Math.Sqrt(C) / 5, answer, "let_go_time_s");
        AssertClose(3 * Math.Sqrt(3) / 8 * 200 * 25 / Math.Sqrt(C), answer, "peak_cord_tension_n");
        AssertClose(Math.Sqrt(C / 3) / 5, answer, "peak_tension_time_s");
        AssertClose(Math.Sqrt(C / 3), answer, "peak_tension_free_cord_length_m");
        AssertClose(Math.Sqrt(C) * 5, answer, "weight_let_go_speed_m_s");
        Assert.Equal(0, Number(answer, "final_spin_rad_s"), 5e-12);

        // The same to the digits worked out by an independent integration.
        Assert.Equal(7.14143, Number(answer, "cord_length_m"), 5e-6);
        Assert.Equal(454.754, Number(answer, "peak_cord_tension_n"), 5e-4);
        Assert.Equal(0.824621, Number(answer, "peak_tension_time_s"), 5e-7);
        Assert.Equal(35.7071, Number(answer, "weight_let_go_speed_m_s"), 5e-5);
        Assert.Equal(4.07630, Number(answer, "hub_turn_rad"), 5e-6);
    }

    /// <summary>Own derivation: zero spin at radial needs R + L = sqrt(R² + C/m), whatever the initial spin.</summary>
    [Fact]
    public void A_complete_de_spin_at_radial_needs_a_cord_shorter_by_the_radius()
    {
        JsonNode answer = Size("150 kg", "200 kg*m^2", "1 m", "weight_mass = \"2 kg\"\nfinal_rate = \"0 rpm\"", "\"radial\"");

        AssertClose(Math.Sqrt(51) - 1, answer, "cord_length_m");
        Assert.Equal(6.14143, Number(answer, "cord_length_m"), 5e-6);
        Assert.Equal("hinging", answer["let_go_phase"]!.GetValue<string>());
    }

    /// <summary>Own figures from an independent integration, relative 1e-9: C = 300 kg m², R = 1.5 m, 3 kg each, 5 rad/s.</summary>
    [Theory]
    [InlineData(5.728416147, 0.763788820, 0.270822422, 0)]
    [InlineData(4.0, 0.533333333, 0.258404789, 1.401814184)]
    [InlineData(6.5, 0.866666667, 0.274627956, -0.526922421)]
    public void Stated_weights_and_cords_leave_the_spin_that_an_independent_integration_found(double cord, double unwinding, double hinging, double spin)
    {
        string length = cord.ToString("R", CultureInfo.InvariantCulture);
        JsonNode answer = Size("300 kg", "300 kg*m^2", "1.5 m", $"weight_mass = \"3 kg\"\ncord_length = \"{length} m\"", "\"radial\"");

        // The table is given to nine decimals.
        Assert.Equal(unwinding, Number(answer, "unwind_time_s"), 1e-9);
        Assert.Equal(unwinding + hinging, Number(answer, "let_go_time_s"), 2e-9);
        Assert.Equal(spin, Number(answer, "final_spin_rad_s"), 2e-9);
        Assert.Equal("final_rate", answer["solved_for"]!.GetValue<string>());
    }

    /// <summary>
    /// A published web answer to this setting gives 0.118 rad/s, for it leaves out how cords unwind. The closed form gives
    /// r = (c - f²)/(c + f²) with f = L/R: the body turns backwards.
    /// </summary>
    [Fact]
    public void Long_cords_reverse_the_spin_instead_of_merely_slowing_it()
    {
        JsonNode answer = Size("150 kg", "150 kg*m^2", "1 m", "weight_mass = \"1 kg\"\ncord_length = \"61 m\"", "\"tangent\"");

        const double C = 1 + (150 / 2.0);
        AssertClose(5 * (C - (61.0 * 61)) / (C + (61.0 * 61)), answer, "final_spin_rad_s");
    }

    [Fact]
    public void Let_go_angles_of_0_and_90_degrees_are_tangent_and_radial()
    {
        const string Masses = "weight_mass = \"2 kg\"\ncord_length = \"4 m\"";
        foreach ((string angle, string name) in new[] { ("0 deg", "tangent"), ("90 deg", "radial") })
        {
            double byAngle = Number(Size("150 kg", "200 kg*m^2", "1 m", Masses, $"{{ angle = \"{angle}\" }}"), "final_spin_rad_s");
            double byName = Number(Size("150 kg", "200 kg*m^2", "1 m", Masses, $"\"{name}\""), "final_spin_rad_s");
            Assert.Equal(byName, byAngle, 1e-12);
        }
    }

    [Fact]
    public void Letting_go_at_a_rate_leaves_that_rate() =>
        Assert.Equal(2, Number(Size("150 kg", "200 kg*m^2", "1 m", "weight_mass = \"2 kg\"\ncord_length = \"8 m\"", "{ rate = \"2 rad/s\" }"), "final_spin_rad_s"), 1e-12);

    [Fact]
    public void Weight_mass_and_cord_length_are_each_other_s_answer()
    {
        double length = Number(Size("150 kg", "200 kg*m^2", "1 m", "weight_mass = \"2 kg\"\nfinal_rate = \"4 rpm\"", "{ angle = \"40 deg\" }"), "cord_length_m");
        string text = length.ToString("R", CultureInfo.InvariantCulture);
        JsonNode answer = Size("150 kg", "200 kg*m^2", "1 m", $"cord_length = \"{text} m\"\nfinal_rate = \"4 rpm\"", "{ angle = \"40 deg\" }");

        // A root found to 1e-15 of a bracket two octaves wide.
        Assert.Equal(2, Number(answer, "weight_mass_kg"), 1e-11);
        Assert.Equal("weight_mass", answer["solved_for"]!.GetValue<string>());
    }

    [Fact]
    public void Customary_units_give_the_same_answer_as_SI()
    {
        JsonNode si = Size("150 kg", "200 kg*m^2", "1 m", "weight_mass = \"2 kg\"\nfinal_rate = \"0 rpm\"", "\"radial\"");

        // 200 kg m² and 1 m by the exact factors slug ft² = 1.3558179483314004 kg m², in = 0.0254 m.
        string inertia = (200 / 1.3558179483314004).ToString("R", CultureInfo.InvariantCulture);
        string radius = (1 / 0.0254).ToString("R", CultureInfo.InvariantCulture);
        JsonNode customary = Size("330 lb", $"{inertia} slug*ft^2", $"{radius} in", "weight_mass = \"2000 g\"\nfinal_rate = \"0 rpm\"", "\"radial\"");

        AssertClose(Number(si, "cord_length_m"), customary, "cord_length_m");
    }

    [Fact]
    public void The_answer_has_the_keys_that_scripts_rely_on()
    {
        JsonNode answer = Invocation.WithInput(SampleCase.Text, "size", "-", "--json").Json;

        foreach (string key in new[] { "cord_length_m", "weight_mass_kg", "unwind_time_s", "let_go_time_s", "final_spin_rad_s", "peak_cord_tension_n", "weight_let_go_speed_m_s", "cord_safety_factor", "hub_turn_rad", "spin_inertia_kg_m2" })
        {
            Assert.True(double.IsFinite(Number(answer, key)), key);
        }

        Assert.Equal(["final_rate", "cord_safety_factor"], answer["requirements"]!.AsArray().Select(r => r!["name"]!.GetValue<string>()));
        Assert.All(answer["requirements"]!.AsArray(), r =>
        {
            Assert.True(r!["met"]!.GetValue<bool>());
            Assert.Matches("^[0-9]+ of [0-9]+ cases", r["note"]!.GetValue<string>());
        });
        Assert.Empty(answer["not_used_yet"]!.AsArray());
    }

    [Theory]
    [InlineData("cord_safety_factor = \"> 3\"", "cord_safety_factor = \"> 3\"", 0)]
    [InlineData("cord_safety_factor = \"> 3\"", "cord_safety_factor = \"> 3000\"", 1)]
    [InlineData("final_rate  = \"0 rpm\"", "final_rate = \"1.5 rpm\"", 1)]
    [InlineData("final_rate  = \"< 1 rpm\"", "final_rate = \"<= 1 rpm\"", 0)]
    [InlineData("cord_safety_factor = \"> 3\"", "nutation = \"< 5 deg\"", 1)]
    [InlineData("breaking_load = \"1.9 kN\"", "", 1)]
    public void A_requirement_that_is_missed_or_cannot_be_judged_sets_exit_code_1(string piece, string replacement, int exitCode)
    {
        string text = SampleCase.Exact.Replace(piece, replacement, StringComparison.Ordinal);

        Assert.Equal(exitCode, Invocation.WithInput(text, "size", "-").ExitCode);
        Assert.Equal(exitCode, Invocation.WithInput(text, "run", "-", "--samples", "2").ExitCode);
    }

    [Fact]
    public void A_design_sized_onto_an_inclusive_limit_meets_it()
    {
        // Only what is the same in the plane and in three dimensions ends on the limit.
        string text = SampleCase.Ideal.Replace("final_rate  = \"0 rpm\"", "final_rate = \"1 rpm\"", StringComparison.Ordinal).Replace("\"< 1 rpm\"", "\"<= 1 rpm\"", StringComparison.Ordinal);

        Assert.Equal(0, Invocation.WithInput(text, "size", "-").ExitCode);
    }

    [Fact]
    public void A_requirement_that_cannot_be_judged_is_neither_met_nor_missed()
    {
        string text = SampleCase.With("breaking_load = \"1.9 kN\"\n", "");
        Invocation run = Invocation.WithInput(text, "size", "-", "--json");

        JsonNode margin = run.Json["requirements"]!.AsArray().Single(r => r!["name"]!.GetValue<string>() == "cord_safety_factor")!;
        Assert.Null(margin["met"]);
        Assert.Null(margin["value"]);
        Assert.Contains("does not count as met", margin["note"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.False(run.Json["all_requirements_met"]!.GetValue<bool>());
        Assert.Contains("NOT SHOWN", Invocation.WithInput(text, "size", "-").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("weight_mass = \"0.7 kg +/- 1 g\"\nfinal_rate  = \"0 rpm\"\nlet_go      = \"radial\"", "cord_length = \"10 mm\"\nfinal_rate = \"0 rpm\"\nlet_go = \"tangent\"", "too short")]
    [InlineData("final_rate  = \"0 rpm\"", "final_rate = \"-60 rpm\"", "No cord length")]
    [InlineData("weight_mass = \"0.7 kg +/- 1 g\"\nfinal_rate  = \"0 rpm\"\nlet_go      = \"radial\"", "weight_mass = \"0.1 kg\"\ncord_length = \"0.5 m\"\nlet_go = { rate = \"1 rpm\" }", "never reached")]
    public void What_no_design_can_do_is_refused_with_the_reason_and_exit_code_3(string piece, string replacement, string says)
    {
        string text = SampleCase.With(piece, replacement).Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal);
        foreach (string verb in new[] { "size", "run" })
        {
            Invocation run = Invocation.WithInput(text, verb, "-");

            Assert.Equal(3, run.ExitCode);
            Assert.Empty(run.Output);
            Assert.Contains(says, Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        }

        JsonNode failure = JsonNode.Parse(Invocation.WithInput(text, "size", "-", "--json").Error)!;
        Assert.Equal((int)ExitCode.Refused, failure["exit_code"]!.GetValue<int>());
    }

    [Fact]
    public void Every_example_is_in_order_and_meets_its_requirements()
    {
        foreach (string example in Repository.Examples)
        {
            Assert.Contains("invented", File.ReadAllText(example), StringComparison.OrdinalIgnoreCase);
            Assert.Equal(0, Invocation.Of("check", example).ExitCode);
            Assert.Equal(0, Invocation.Of("size", example).ExitCode);
            Assert.Equal(0, Invocation.Of("run", example, "--samples", "2", "--cases", "1300").ExitCode);
            Assert.StartsWith("<!DOCTYPE html>", Invocation.Of("report", example, "--cases", "1300").Output, StringComparison.Ordinal);
        }
    }

    private static JsonNode Size(string mass, string inertia, string radius, string masses, string letGo)
    {
        string text = $$"""
            format = 1
            title = "Two weights, hub and spin as in a textbook exercise"

            [vehicle]
            mass = "{{mass}}"
            inertia = { zz = "{{inertia}}" }
            inertia_about = "centre of mass"
            spin_axis = "z"

            [spin]
            rate = "5 rad/s"

            [despin]
            hub_radius = "{{radius}}"
            weights = 2
            {{masses}}
            let_go = {{letGo}}
            """;
        Invocation run = Invocation.WithInput(text, "size", "-", "--json");
        Assert.True(run.ExitCode == 0, run.Error);
        return run.Json;
    }

    private static double Number(JsonNode answer, string key) => answer[key]!.GetValue<double>();

    private static void AssertClose(double expected, JsonNode answer, string key) =>
        Assert.InRange(Number(answer, key) / expected, 1 - Exact, 1 + Exact);
}
