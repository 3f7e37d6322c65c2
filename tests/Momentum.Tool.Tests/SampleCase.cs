using System.Text.RegularExpressions;

namespace Momentum.Tool.Tests;

/// <summary>
/// A valid case that tests change one line of. Its vehicle is invented. It asks for a share of cases that a hundred of them show, so that
/// a test that is about something else costs little.
/// </summary>
internal static partial class SampleCase
{
    public const string Text = """
        format = 1
        title  = "Invented: Sandpiper test article"

        [vehicle]
        mass          = "120 kg +/- 0.5 %"
        centre        = ["0 mm", "0 mm", "250 mm"]
        inertia       = { xx = "14.2 kg*m^2", yy = "14.6 kg*m^2", zz = "17.5 kg*m^2 +/- 1 %", xy = "0.04 kg*m^2", xz = "-0.02 kg*m^2", yz = "0.01 kg*m^2" }
        inertia_about = "centre of mass"
        product_sign  = "tensor element"
        spin_axis     = "z"

        [spin]
        rate   = "50 rpm +/- 2 %"
        nutation = "0.5 deg"

        [despin]
        hub_radius  = "420 mm +/- 0.2 mm max"
        weights     = 2
        weight_mass = "0.7 kg +/- 1 g"
        final_rate  = "0 rpm"
        let_go      = "radial"

        [despin.cord]
        line_density  = "6 g/m"
        breaking_load = "1.9 kN"

        [require]
        final_rate  = "< 1 rpm"
        cord_safety_factor = "> 3"

        [spread]
        share = "90 %"

        """;

    /// <summary>The sample without its tolerances.</summary>
    public static string Exact => Tolerance().Replace(Text, "\"");

    /// <summary>The sample without tolerances, and without what the planar motion leaves out: products of inertia, wobble, mass of the cords.</summary>
    public static string Ideal => Exact
        .Replace(", xy = \"0.04 kg*m^2\", xz = \"-0.02 kg*m^2\", yz = \"0.01 kg*m^2\" }", " }", StringComparison.Ordinal)
        .Replace("nutation = \"0.5 deg\"\n", "", StringComparison.Ordinal)
        .Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal);

    /// <summary>The sample with a fifth of the spin left, on cords sized as springs.</summary>
    public static string OnSprings => Sprung(Text);

    /// <summary>The sample on springs, without tolerances and without what the planar motion leaves out.</summary>
    public static string IdealOnSprings => Sprung(Ideal);

    /// <summary>The sample with one piece of it replaced.</summary>
    public static string With(string piece, string replacement)
    {
        Assert.Contains(piece, Text, StringComparison.Ordinal);
        return Text.Replace(piece, replacement, StringComparison.Ordinal);
    }

    private static string Sprung(string text) => text
        .Replace("final_rate  = \"0 rpm\"", "final_rate  = \"10 rpm\"", StringComparison.Ordinal)
        .Replace("line_density  = \"6 g/m\"\n", "", StringComparison.Ordinal)
        .Replace("breaking_load = ", "forgive_spin_up = true\ndamping = \"0.05\"\nbreaking_load = ", StringComparison.Ordinal)
        .Replace("\"< 1 rpm\"", "\"< 11 rpm\"", StringComparison.Ordinal);

    [GeneratedRegex(@" \+/- [^""]*""")]
    private static partial Regex Tolerance();

    /// <summary>The line on which a piece of a text begins, from 1.</summary>
    public static int LineOf(string text, string piece)
    {
        int at = text.IndexOf(piece, StringComparison.Ordinal);
        Assert.True(at >= 0, $"\"{piece}\" is not in the text");
        return text.AsSpan(0, at).Count('\n') + 1;
    }
}
