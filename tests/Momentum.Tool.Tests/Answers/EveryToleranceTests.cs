using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Momentum.Cases;
using Momentum.Cases.Keys;

namespace Momentum.Tool.Tests.Answers;

/// <summary>Every quantity of the case may carry a tolerance, and each one acts or is an error that says why it cannot.</summary>
public sealed partial class EveryToleranceTests
{
    // Behind each value, between @ and @: its key, and the tolerance that is tried.
    private const string InSpace = """
        format = 1
        title  = "Invented: everything stated"

        [vehicle]
        mass          = "120 kg@vehicle.mass|1 %@"
        centre        = ["0 mm@vehicle.centre|1 mm@", "0 mm", "250 mm"]
        inertia       = { xx = "14.2 kg*m^2@vehicle.inertia.xx|1 %@", yy = "14.6 kg*m^2@vehicle.inertia.yy|1 %@", zz = "17.5 kg*m^2@vehicle.inertia.zz|1 %@", xy = "0.04 kg*m^2@vehicle.inertia.xy|0.2 kg*m^2@", xz = "-0.02 kg*m^2@vehicle.inertia.xz|0.2 kg*m^2@", yz = "0.01 kg*m^2@vehicle.inertia.yz|0.2 kg*m^2@" }
        inertia_about = "centre of mass"
        product_sign  = "tensor element"
        spin_axis     = "z"

        [spin]
        rate     = "50 rpm@spin.rate|2 %@"
        nutation = "0.5 deg@spin.nutation|0.1 deg@"

        [despin]
        hub_radius          = "420 mm@despin.hub_radius|1 mm max@"
        weights             = 2
        weight_mass         = "0.7 kg@despin.weight_mass|2 g each@"
        cord_length         = "2.45 m@despin.cord_length|2 mm +/- 1 mm each@"
        let_go              = { angle = "80 deg@despin.let_go.angle|2 deg@" }
        second_weight_delay = "1 ms@despin.second_weight_delay|@"
        cord_plane_offset   = "10 mm@despin.cord_plane_offset|2 mm@"

        [despin.deck_edge]
        radius = "700 mm@despin.deck_edge.radius|60 mm max@"
        height = "2.5 mm@despin.deck_edge.height|2.4 mm max@"

        [despin.cord]
        line_density  = "1 g/m@despin.cord.line_density|3 %@"
        stiffness     = "90 kN@despin.cord.stiffness|5 %@"
        breaking_load = "1.9 kN@despin.cord.breaking_load|+100/-300 N max@"
        damping       = "0.05@despin.cord.damping|0.01@"

        [require]
        final_rate = "< 20 rpm"

        [spread]
        share      = "90 %@spread.share|1 %@"
        confidence = "95 %@spread.confidence|1 %@"

        """;

    // With the other rules of let-go, the wish, and what is not used yet.
    private static readonly string _wish = InSpace
        .Replace("cord_length         = \"2.45 m@despin.cord_length|2 mm +/- 1 mm each@\"", "final_rate = \"5 rpm@despin.final_rate|1 rpm@\"", StringComparison.Ordinal)
        .Replace("{ angle = \"80 deg@despin.let_go.angle|2 deg@\" }", "\"radial\"\nlet_go_error = \"3 deg@despin.let_go_error|@\"", StringComparison.Ordinal) + """

        [burn]
        thrust              = "9.5 kN@burn.thrust|1 %@"
        duration            = "18 s@burn.duration|1 %@"
        propellant_mass     = "61 kg@burn.propellant_mass|1 %@"
        thrust_misalignment = "0.1 deg@burn.thrust_misalignment|0.1 deg@"
        thrust_offset       = "0.5 mm@burn.thrust_offset|0.5 mm@"

        [orbit]
        perigee_height = "310 km@orbit.perigee_height|1 km@"
        apogee_height  = "540 km@orbit.apogee_height|1 km@"
        inclination    = "51.6 deg@orbit.inclination|1 deg@"

        """;

    private static readonly string _together = InSpace
        .Replace("120 kg@vehicle.mass|1 %@", "120 kg +/- 1 %", StringComparison.Ordinal)
        .Replace("50 rpm@spin.rate|2 %@", "50 rpm +/- 2 %", StringComparison.Ordinal) + """

        [[correlated]]
        keys        = ["vehicle.mass", "spin.rate"]
        coefficient = "0.5@correlated.coefficient|0.1@"

        """;

    private static readonly string _sensed = InSpace
        .Replace("{ angle = \"80 deg@despin.let_go.angle|2 deg@\" }", "{ rate = \"15 rpm@despin.let_go.rate|1 rpm each@\" }", StringComparison.Ordinal);

    private static readonly string _onABench = InSpace.Replace("nutation = \"0.5 deg@spin.nutation|0.1 deg@\"\n", "", StringComparison.Ordinal) + """

        [bench]
        friction_torque = "0.1 N*m@bench.friction_torque|10 %@"
        spin_down_time  = "240 s@bench.spin_down_time|10 %@"
        gravity         = "9.81 m/s^2@bench.gravity|1 %@"
        cord_height     = "1.1 m@bench.cord_height|1 %@"
        wall_distance   = "30 m@bench.wall_distance|1 %@"

        """;

    private static readonly string _ofParts = Vehicle().Replace(InSpace, "") + """

        [[part]]
        name   = "case"
        shape  = "tube"
        density = "7000 kg/m^3@part.density|1 %@"
        radius = "420 mm@part.radius|1 mm@"
        inner_radius = "410 mm@part.inner_radius|1 mm@"
        height = "500 mm@part.height|2 mm@"
        growth = "5 %@part.growth|2 %@"

        [[part]]
        name   = "box"
        shape  = "box"
        mass   = "20 kg@part.mass|2 %@"
        size   = ["400 mm@part.size|5 mm@", "300 mm", "120 mm"]
        at     = ["0 mm@part.at|1 mm@", "0 mm", "30 mm"]
        turned = ["0 deg", "5 deg@part.turned|2 deg@", "0 deg"]

        """;

    private static readonly string[] _cases = [InSpace, _wish, _together, _sensed, _onABench, _ofParts];

    // What has no tolerance, each for its reason; all other keys act.
    private static readonly string[] _refused =
    [
        "despin.final_rate", "bench.cord_height", "bench.wall_distance", "spread.share", "spread.confidence", "correlated.coefficient",
        "burn.thrust", "burn.duration", "burn.propellant_mass", "burn.thrust_misalignment", "burn.thrust_offset",
        "orbit.perigee_height", "orbit.apogee_height", "orbit.inclination",
    ];

    public static TheoryData<string> Keys => [.. Quantities(typeof(Case), "")];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Every_tolerance_acts_or_is_refused_with_the_reason(string key)
    {
        string given = _cases.FirstOrDefault(c => c.Contains($"@{key}|", StringComparison.Ordinal)) ?? "";
        Assert.True(given.Length > 0, "This test states no value for the key: add one to its cases.");

        Invocation without = Invocation.WithInput(Written(given, ""), "size", "-", "--json", "--cases", "100");
        Invocation with = Invocation.WithInput(Written(given, key), "size", "-", "--json", "--cases", "100");

        if (_refused.Contains(key))
        {
            Assert.Equal(2, with.ExitCode);
            Assert.Contains(key.Split('.')[^1], with.Error, StringComparison.Ordinal);
            Assert.Contains("tolerance", with.Error, StringComparison.Ordinal);
            return;
        }

        Assert.True(with.ExitCode is 0 or 1, with.Error);
        Assert.NotEqual(Figures(without), Figures(with));
    }

    /// <summary>The figures over the cases, without the list of inputs: naming a tolerance is not acting.</summary>
    private static string Figures(Invocation run)
    {
        if (run.Json["dispersion"] is not JsonObject dispersion)
        {
            return "";
        }

        dispersion.Remove("inputs");
        dispersion.Remove("drawn_otherwise");
        return dispersion.ToJsonString();
    }

    /// <summary>The case with the tolerance of one key. What is itself the size of an error stands there only then.</summary>
    private static string Written(string text, string key)
    {
        string plain = ItselfAnError().Replace(text, m => m.Groups["key"].Value == key ? m.Value : "");
        return Marked().Replace(plain, m => m.Groups["key"].Value == key && m.Groups["tolerance"].Length > 0
            ? (m.Groups["tolerance"].Value.StartsWith('+') ? " " : " +/- ") + m.Groups["tolerance"].Value
            : "");
    }

    private static IEnumerable<string> Quantities(Type section, string path)
    {
        foreach (KeyDescription key in SectionDescription.Of(section).Keys)
        {
            string name = KeyDescription.Join(path, key.Name);
            if (key.Form is KeyForm.Quantity or KeyForm.Triple)
            {
                yield return name;
            }
            else if (key.Form is KeyForm.Section or KeyForm.Sections)
            {
                foreach (string inner in Quantities(key.ValueType, name))
                {
                    yield return inner;
                }
            }
        }
    }

    [GeneratedRegex(@"@(?<key>[a-z_.]+)\|(?<tolerance>[^@]*)@")]
    private static partial Regex Marked();

    [GeneratedRegex(@"[a-z_]+\s*= ""[^""]*@(?<key>[a-z_.]+)\|@""\n")]
    private static partial Regex ItselfAnError();

    [GeneratedRegex(@"mass          = [^\n]*\ncentre [^\n]*\ninertia [^\n]*\ninertia_about[^\n]*\nproduct_sign[^\n]*\n")]
    private static partial Regex Vehicle();
}
