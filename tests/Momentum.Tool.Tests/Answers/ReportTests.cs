using System.Security.Cryptography;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Momentum.Tool.Tests.Answers;

/// <summary>The report of a case shows the figures of its answer, its inputs, and where they come from.</summary>
public sealed partial class ReportTests
{
    [Fact]
    public void The_report_shows_the_answer_and_where_it_comes_from()
    {
        using var place = new Workplace();
        string path = place.Write("tern.toml", SampleCase.Text);

        Invocation run = Invocation.Of("report", path, "--output", place.PathOf("tern.html"), "--json");

        Assert.Equal(0, run.ExitCode);
        Assert.Equal(["tern.html", "tern.toml"], place.Files);
        Assert.Equal(place.PathOf("tern.html"), run.Json["report"]!.GetValue<string>());
        string page = File.ReadAllText(place.PathOf("tern.html"));
        string text = Tags().Replace(page, "");
        double cord = run.Json["cord_length_m"]!.GetValue<double>();
        Assert.Contains(FormattableString.Invariant($"cords of {cord:F3}"), text, StringComparison.Ordinal);
        Assert.Contains("Invented: Sandpiper test article", text, StringComparison.Ordinal);
        Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path))), text, StringComparison.Ordinal);
        Assert.Contains("Both requirements met", text, StringComparison.Ordinal);
        foreach (string given in new[] { "50 rpm", "± 2 %", "420 mm", "± 0.2 mm, limits", "spin.nutation", "despin.cord.line_density", "0 mm, 0 mm, 250 mm" })
        {
            Assert.Contains(given, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("let_go      = \"radial\"", "let_go = \"tangent\"")]
    [InlineData("let_go      = \"radial\"", "let_go = { angle = \"35 deg\" }")]
    [InlineData("weights     = 2", "weights = 4")]
    [InlineData("weight_mass = \"0.7 kg +/- 1 g\"\nfinal_rate  = \"0 rpm\"\nlet_go      = \"radial\"", "weight_mass = \"0.7 kg\"\ncord_length = \"5 m\"\nlet_go = { rate = \"0.5 rpm\" }")]
    [InlineData("product_sign  = \"tensor element\"", "product_sign = \"positive integral\"")]
    [InlineData("second", "second")]
    [InlineData("springs", "springs")]
    public void Every_kind_of_case_has_a_report(string piece, string replacement)
    {
        string text = piece switch
        {
            "second" => SampleCase.With("weights     = 2", "weights = 2\nsecond_weight_delay = \"2 ms\""),
            "springs" => SampleCase.OnSprings,
            _ => SampleCase.With(piece, replacement),
        };
        Invocation run = Invocation.WithInput(text, "report", "-");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.StartsWith("<!DOCTYPE html>", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("A check failed", Tags().Replace(run.Output, ""), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_case_gives_the_same_page() =>
        Assert.Equal(Invocation.WithInput(SampleCase.Text, "report", "-").Output, Invocation.WithInput(SampleCase.Text, "report", "-").Output);

    [Fact]
    public void A_title_cannot_bring_code_into_the_page()
    {
        Invocation run = Invocation.WithInput(SampleCase.With("Invented: Sandpiper", "<script>alert(1)</script>"), "report", "-");

        Assert.Equal(0, run.ExitCode);
        Assert.DoesNotContain("<script>alert", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_late_weight_is_answered_when_its_delay_is_stated()
    {
        JsonNode json = Invocation.WithInput(SampleCase.With("weights     = 2", "weights = 2\nsecond_weight_delay = \"2 ms\""), "size", "-", "--json").Json;

        // Own derivation, to first order in the delay: the hub at rest is pulled to one side by m v²/L, the weight circling
        // about the cord's end point on it; impulse over mass.
        double drift = json["late_weight_drift_m_s"]!.GetValue<double>();
        double tension = json["weight_mass_kg"]!.GetValue<double>() * Math.Pow(json["weight_let_go_speed_m_s"]!.GetValue<double>(), 2) / json["cord_length_m"]!.GetValue<double>();
        Assert.InRange(drift / (tension * 2e-3 / 120), 0.95, 1.05);
        Assert.DoesNotContain("despin.second_weight_delay", json["not_used_yet"]!.ToJsonString(), StringComparison.Ordinal);
    }

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}
