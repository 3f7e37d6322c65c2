using System.Globalization;
using System.Text.Json.Nodes;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tool.Tests.Answers;

/// <summary>Cords sized as springs: what the tool answers is the library's design, in every part of the answer.</summary>
public sealed class SpringCordTests
{
    // The same calls with numbers that differ in the last bit of a conversion; the sizing ends where its slope is rounding.
    private const double Same = 1e-9;

    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(17.5), Length.FromMillimeters(420), RotationalSpeed.FromRevolutionsPerMinute(50));

    private static readonly SpringCordDesign _design = _hub.SizeSpringCord(
        Mass.FromKilograms(0.7), RotationalSpeed.FromRevolutionsPerMinute(10), LetGo.Radial, dampingRatio: 0.05);

    [Fact]
    public void The_design_and_its_motion_are_the_library_s()
    {
        JsonNode answer = Size(SampleCase.IdealOnSprings);
        SpringCordMotion motion = _design.Deploy();

        AssertClose(_design.CordLength.Meters, answer, "cord_length_m");
        AssertClose(_design.Stiffness.Newtons, answer, "stiffness_n");
        AssertClose(_design.SpringRate.NewtonsPerMeter, answer, "spring_rate_n_m");
        AssertClose(motion.FinalSpin.RadiansPerSecond, answer, "final_spin_rad_s");
        AssertClose(10 * Math.PI / 30, answer, "final_spin_rad_s", 1e-8);
        AssertClose(motion.PeakTension.Tension.Newtons, answer, "peak_cord_tension_n");
        AssertClose(motion.At(motion.PeakTension.Time).Stretch.Meters, answer, "peak_tension_stretch_m");
        AssertClose(motion.LargestStretch.Meters, answer, "largest_stretch_m");
        AssertClose(motion.AtLetGo.Energy.Elastic.Joules / 2, answer, "let_go_stretch_energy_j");
        AssertClose(1900 / motion.PeakTension.Tension.Newtons, answer, "cord_safety_factor");
    }

    [Fact]
    public void What_the_springs_forgive_stands_beside_what_cords_without_stretch_would()
    {
        JsonNode springs = Size(SampleCase.IdealOnSprings)["spring_cords"]!;
        SpinSensitivity rigid = _design.WithoutStretch().Sensitivity();
        double onePercent = 0.01 * 50 * Math.PI / 30;

        // The sizing leaves a slope of 1e-7 at most.
        Assert.Equal(0, Number(springs, "final_spin_by_1_percent_more_spin_rad_s"), 1e-7 * onePercent);
        AssertClose(0.2 * onePercent, springs, "final_spin_by_1_percent_more_spin_without_stretch_rad_s", 1e-8);
        AssertClose(_design.Sensitivity().ToSpinInertia * onePercent, springs, "final_spin_by_1_percent_more_inertia_rad_s");
        AssertClose(rigid.ToSpinInertia * onePercent, springs, "final_spin_by_1_percent_more_inertia_without_stretch_rad_s");
        Assert.InRange(Number(springs, "inertia_error_forgiven_share"), 0.05, 0.5);
        Assert.Contains("forgive only by a share", Invocation.WithInput(SampleCase.IdealOnSprings, "size", "-").Output, StringComparison.Ordinal);
        Assert.Null(Size(SampleCase.Ideal)["spring_cords"]);
    }

    [Fact]
    public void In_three_dimensions_it_is_the_same_design()
    {
        // Ideal: nothing that the plane leaves out. Two independent computations of the same springs.
        JsonNode answer = Size(SampleCase.IdealOnSprings);
        JsonNode whole = answer["whole_motion"]!;

        AssertClose(Number(answer, "final_spin_rad_s"), whole, "final_spin_rad_s", 1e-8);
        AssertClose(Number(answer, "peak_cord_tension_n"), whole, "peak_tension_cord_1_n", 1e-6);
        AssertClose(Number(answer, "peak_cord_tension_n"), whole, "peak_tension_cord_2_n", 1e-6);
    }

    /// <summary>The case as built, spun up 3 % too fast: the sized cord with its stiffness on the one hand, that without stretch on the other.</summary>
    [Fact]
    public void A_spin_up_that_is_3_per_cent_high_ends_nearer_to_the_wish_than_on_cords_without_stretch()
    {
        double wish = 10 * Math.PI / 30;
        JsonNode sized = Size(SampleCase.IdealOnSprings);
        string springs = AsBuilt(Number(sized, "cord_length_m"), FormattableString.Invariant($"stiffness = \"{Number(sized, "stiffness_n"):R} N\"\ndamping = \"0.05\"\n"));
        double spring = Number(Size(springs)["whole_motion"]!, "final_spin_rad_s");
        string rigid = AsBuilt(Number(Size(SampleCase.IdealOnSprings.Replace("forgive_spin_up = true\n", "", StringComparison.Ordinal)), "cord_length_m"), "");
        double stiff = Number(Size(rigid)["whole_motion"]!, "final_spin_rad_s");

        // What the planar figures leave out is said where it matters.
        Assert.Contains(Size(springs)["warnings"]!.AsArray(), w => w!["key"]!.GetValue<string>() == "despin.cord.stiffness");
        Assert.DoesNotContain(Size(SampleCase.IdealOnSprings)["warnings"]!.AsArray(), w => w!["key"]!.GetValue<string>() == "despin.cord.stiffness");

        // Without stretch the spin is off by the same 3 %; the springs leave second order.
        Assert.Equal(1.03 * wish, stiff, 1e-8);
        Assert.True(Math.Abs(spring - wish) < 0.2 * Math.Abs(stiff - wish), FormattableString.Invariant($"{spring} against {stiff}, wished {wish}"));

        static string AsBuilt(double cord, string lines) => SampleCase.Ideal
            .Replace("50 rpm", "51.5 rpm", StringComparison.Ordinal)
            .Replace("final_rate  = \"0 rpm\"", FormattableString.Invariant($"cord_length = \"{cord:R} m\""), StringComparison.Ordinal)
            .Replace("breaking_load", lines + "breaking_load", StringComparison.Ordinal);
    }

    [Fact]
    public void The_spread_is_that_of_the_spring_cords()
    {
        string poorSpin = SampleCase.IdealOnSprings.Replace("\"50 rpm\"", "\"50 rpm +/- 3 %\"", StringComparison.Ordinal);
        double springs = Number(Size(poorSpin)["dispersion"]!, "final_spin_standard_deviation_rad_s");
        double rigid = Number(Size(poorSpin.Replace("forgive_spin_up = true\n", "", StringComparison.Ordinal))["dispersion"]!, "final_spin_standard_deviation_rad_s");

        // Without stretch it is 3 % of the final spin; a standard deviation of 100 cases is known to 7 %, three times that.
        Assert.InRange(rigid / (0.03 * 10 * Math.PI / 30), 0.79, 1.21);
        Assert.True(springs < 0.1 * rigid);
    }

    [Fact]
    public void The_margin_is_judged_on_the_springs_tension()
    {
        JsonNode answer = Size(SampleCase.IdealOnSprings);
        JsonNode margin = answer["requirements"]!.AsArray().Single(r => r!["name"]!.GetValue<string>() == "cord_safety_factor")!;

        AssertClose(1900 / _design.Deploy().PeakTension.Tension.Newtons, margin, "value", 1e-6);
        Assert.True(margin["met"]!.GetValue<bool>());
    }

    [Fact]
    public void A_cord_length_gives_the_weight_that_gave_it()
    {
        string length = Number(Size(SampleCase.IdealOnSprings), "cord_length_m").ToString("R", CultureInfo.InvariantCulture);
        JsonNode answer = Size(SampleCase.IdealOnSprings.Replace("weight_mass = \"0.7 kg\"", $"cord_length = \"{length} m\"", StringComparison.Ordinal));

        // Two searches, each to a slope of 1e-7.
        AssertClose(0.7, answer, "weight_mass_kg", 1e-6);
        AssertClose(_design.Stiffness.Newtons, answer, "stiffness_n", 1e-5);
        Assert.Equal("weight_mass", answer["solved_for"]!.GetValue<string>());
    }

    [Fact]
    public void A_late_weight_is_counted_in_three_dimensions_only_and_the_answer_says_so()
    {
        string late = SampleCase.IdealOnSprings.Replace("let_go      = \"radial\"", "let_go = \"radial\"\nsecond_weight_delay = \"2 ms\"", StringComparison.Ordinal);
        JsonNode answer = Size(late);

        Assert.Null(answer["late_weight_final_spin_rad_s"]);
        Assert.True(Number(answer["dispersion"]!, "final_spin_standard_deviation_rad_s") > 0);
        Assert.Contains(answer["assumptions"]!.AsArray(), a => a!.GetValue<string>().Contains("counted over the cases of the whole motion only", StringComparison.Ordinal));
    }

    [Fact]
    public void The_history_holds_the_stretch_and_conserves_energy_with_it()
    {
        JsonNode history = Invocation.WithInput(SampleCase.IdealOnSprings, "run", "-", "--samples", "60", "--json").Json["history"]!;
        int rows = history["time_s"]!.AsArray().Count;

        // Integrated to 1e-13 a step.
        for (int row = 0; row < rows; row++)
        {
            Assert.InRange(Energy(row) / Energy(0), 1 - 1e-10, 1 + 1e-10);
        }

        Assert.Equal(_design.Deploy().AtLetGo.Stretch.Meters, At("cord_stretch_m", rows - 1), 1e-9);
        Assert.Equal(0, At("cord_tension_n", rows - 1));

        double Energy(int row) => At("hub_energy_j", row) + At("weights_energy_j", row) + At("stretch_energy_j", row) + At("damped_energy_j", row);
        double At(string column, int row) => history[column]![row]!.GetValue<double>();
    }

    [Theory]
    [InlineData("final_rate  = \"10 rpm\"", "final_rate = \"47 rpm\"", "forgive_spin_up = true: no cord length and spring were found")]
    [InlineData("weight_mass = \"0.7 kg +/- 1 g\"", "weight_mass = \"1 mg\"", "forgive_spin_up = true: the cords of such a design are about")]
    public void What_no_spring_can_do_is_refused_in_one_line_under_the_key(string piece, string replacement, string says)
    {
        Invocation run = Invocation.WithInput(SampleCase.OnSprings.Replace(piece, replacement, StringComparison.Ordinal), "size", "-");

        Assert.Equal(3, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains(says, Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    /// <summary>
    /// A design that exists, with so much spin left and so late a let-go that a little more inertia never lets go (found by a search
    /// over hubs, weights and angles).
    /// </summary>
    [Fact]
    public void A_design_on_the_brink_is_refused_in_the_case_s_own_words()
    {
        string brink = SampleCase.IdealOnSprings
            .Replace("zz = \"17.5 kg*m^2\"", "zz = \"12 kg*m^2\"", StringComparison.Ordinal)
            .Replace("hub_radius  = \"420 mm\"", "hub_radius = \"355 mm\"", StringComparison.Ordinal)
            .Replace("rate   = \"50 rpm\"", "rate = \"85 rpm\"", StringComparison.Ordinal)
            .Replace("weight_mass = \"0.7 kg\"", "weight_mass = \"2 kg\"", StringComparison.Ordinal)
            .Replace("final_rate  = \"10 rpm\"", "final_rate = \"68 rpm\"", StringComparison.Ordinal)
            .Replace("let_go      = \"radial\"", "let_go = { angle = \"150 deg\" }", StringComparison.Ordinal)
            .Replace("damping = \"0.05\"", "damping = \"0.02\"", StringComparison.Ordinal);
        Invocation run = Invocation.WithInput(brink, "size", "-");

        Assert.Equal(3, run.ExitCode);
        Assert.Contains("on the brink", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("stiffer", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Forgive_spin_up_false_is_as_if_it_were_left_out()
    {
        string without = SampleCase.IdealOnSprings.Replace("forgive_spin_up = true\n", "", StringComparison.Ordinal);
        string no = SampleCase.IdealOnSprings.Replace("forgive_spin_up = true", "forgive_spin_up = false", StringComparison.Ordinal);

        Assert.Equal(Invocation.WithInput(without, "size", "-").Output, Invocation.WithInput(no, "size", "-").Output);
    }

    [Fact]
    public void Check_names_both_unknowns() =>
        Assert.Contains("cord_length and despin.cord.stiffness", Invocation.WithInput(SampleCase.OnSprings, "check", "-").Output, StringComparison.Ordinal);

    private static JsonNode Size(string text)
    {
        Invocation run = Invocation.WithInput(text, "size", "-", "--json");
        Assert.True(run.ExitCode is 0 or 1, run.Error);
        return run.Json;
    }

    private static double Number(JsonNode answer, string key) => answer[key]!.GetValue<double>();

    private static void AssertClose(double expected, JsonNode answer, string key, double relative = Same) =>
        Assert.Equal(expected, Number(answer, key), relative * Math.Abs(expected));
}
