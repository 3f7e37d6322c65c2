using System.Text.Json.Nodes;

namespace Momentum.Tool.Tests.Answers;

/// <summary>Tolerances of the case become a dispersion, on which the requirements are judged.</summary>
public sealed class SpreadTests
{
    [Fact]
    public void A_case_without_tolerances_has_no_dispersion_and_says_that_it_is_judged_on_the_nominal()
    {
        JsonNode answer = Size(SampleCase.Ideal);

        Assert.Null(answer["dispersion"]);
        Assert.All(answer["requirements"]!.AsArray(), r => Assert.Equal("met at nominal", r!["verdict"]!.GetValue<string>()));
        Assert.All(answer["requirements"]!.AsArray(), r => Assert.Contains("nominal", r!["note"]!.GetValue<string>(), StringComparison.Ordinal));
    }

    /// <summary>Own derivation: at complete de-spin at the tangent r = (c - f²)/(c + f²), so that dr = dlnC (c - 1)/(2 c).</summary>
    [Fact]
    public void Inertia_alone_leaves_half_of_its_relative_error_as_spin()
    {
        string text = SampleCase.Exact
            .Replace("zz = \"17.5 kg*m^2\"", "zz = \"17.5 kg*m^2 +/- 1 %\"", StringComparison.Ordinal)
            .Replace("let_go      = \"radial\"", "let_go = \"tangent\"", StringComparison.Ordinal)
            .Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal);
        JsonNode dispersion = Size(text, cases: 2500)["dispersion"]!;

        double c = 1 + (17.5 / (1.4 * 0.42 * 0.42));
        double expected = 0.01 * (c - 1) / (2 * c) * 50 * Math.PI / 30;
        // Four standard errors of a standard deviation, 1 / sqrt(2 n); and what the second order adds.
        double cases = dispersion["cases"]!.GetValue<int>();
        Assert.InRange(dispersion["final_spin_standard_deviation_rad_s"]!.GetValue<double>() / expected, 0.99 - (4 / Math.Sqrt(2 * cases)), 1.01 + (4 / Math.Sqrt(2 * cases)));
        JsonNode effect = dispersion["inputs"]!.AsArray()[0]!;
        Assert.Equal("vehicle.inertia.zz", effect["input"]!.GetValue<string>());
        Assert.Equal(expected, effect["final_spin_change_at_plus_one_sigma_rad_s"]!.GetValue<double>(), 0.02 * expected);
    }

    [Fact]
    public void A_requirement_that_the_nominal_meets_is_not_met_if_too_many_cases_miss_it()
    {
        string tight = SampleCase.With("\"< 1 rpm\"", "\"< 0.1 rpm\"");
        Invocation run = Invocation.WithInput(tight, "size", "-", "--json");

        Assert.Equal(1, run.ExitCode);
        JsonNode rate = run.Json["requirements"]![0]!;
        Assert.False(rate["met"]!.GetValue<bool>());
        Assert.True(rate["value"]!.GetValue<double>() > 0.1 * Math.PI / 30);
        Assert.InRange(Math.Abs(run.Json["final_spin_rad_s"]!.GetValue<double>()), 0, 1e-9);
        Assert.Equal(0, Invocation.WithInput(SampleCase.Ideal.Replace("\"< 1 rpm\"", "\"< 0.1 rpm\"", StringComparison.Ordinal), "size", "-").ExitCode);
    }

    [Fact]
    public void The_bound_at_the_required_share_of_a_normal_spread_is_its_quantile()
    {
        string light = SampleCase.Exact.Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal).Replace("zz = \"17.5 kg*m^2\"", "zz = \"17.5 kg*m^2 +/- 1 %\"", StringComparison.Ordinal)
            .Replace("share = \"90 %\"", "share = \"99 %\"", StringComparison.Ordinal).Replace("\"< 1 rpm\"", "\"< 0.64 rpm\"", StringComparison.Ordinal);
        JsonNode dispersion = Size(light, cases: 3000)["dispersion"]!;
        double ratio = dispersion["spin_magnitude_at_share_rad_s"]!.GetValue<double>() / dispersion["final_spin_standard_deviation_rad_s"]!.GetValue<double>();

        // Of a normal spread 99 % lie within 2.576 standard deviations; a quantile so far out is known to some 3 % from 3000 cases.
        Assert.InRange(ratio, 2.35, 2.8);
    }

    [Fact]
    public void The_same_seed_gives_the_same_figures_and_another_seed_others()
    {
        string one = Invocation.WithInput(SampleCase.Text, "size", "-", "--json", "--cases", "100").Output;

        Assert.Equal(one, Invocation.WithInput(SampleCase.Text, "size", "-", "--json", "--cases", "100", "--seed", "1").Output);
        Assert.NotEqual(one, Invocation.WithInput(SampleCase.Text, "size", "-", "--json", "--cases", "100", "--seed", "2").Output);
    }

    [Fact]
    public void Masses_of_parts_spread_the_spin_inertia_by_the_root_of_the_sum_of_squares()
    {
        // Two rings of equal inertia share, 2 % each: 2 % / sqrt 2 of the whole.
        const string Ring = "shape = \"tube\"\nmass = \"30 kg +/- 2 %\"\nradius = \"400 mm\"\ninner_radius = \"390 mm\"\nheight = \"100 mm\"\n";
        int vehicle = SampleCase.Exact.IndexOf("mass ", StringComparison.Ordinal);
        string text = SampleCase.Exact.Remove(vehicle, SampleCase.Exact.IndexOf("spin_axis", StringComparison.Ordinal) - vehicle)
            .Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal)
            .Replace("let_go      = \"radial\"", "let_go = \"tangent\"", StringComparison.Ordinal)
            + $"\n[[part]]\nname = \"one\"\n{Ring}\n[[part]]\nname = \"two\"\n{Ring}";
        JsonNode answer = Size(text, cases: 2500);

        double inertia = answer["spin_inertia_kg_m2"]!.GetValue<double>();
        double c = 1 + (inertia / (1.4 * 0.42 * 0.42));
        double expected = 0.02 / Math.Sqrt(2) * (c - 1) / (2 * c) * 50 * Math.PI / 30;
        double cases = answer["dispersion"]!["cases"]!.GetValue<int>();
        Assert.InRange(answer["dispersion"]!["final_spin_standard_deviation_rad_s"]!.GetValue<double>() / expected, 0.99 - (4 / Math.Sqrt(2 * cases)), 1.01 + (4 / Math.Sqrt(2 * cases)));
    }

    private static JsonNode Size(string text, int cases = 100)
    {
        Invocation run = Invocation.WithInput(text, "size", "-", "--json", "--cases", cases.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(run.ExitCode is 0 or 1, run.Error);
        return run.Json;
    }
}
