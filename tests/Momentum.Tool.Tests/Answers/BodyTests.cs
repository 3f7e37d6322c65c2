using System.Text;
using System.Text.Json.Nodes;

namespace Momentum.Tool.Tests.Answers;

/// <summary>The body of a case: stated or of parts, its spin inertia, and what a reviewer is warned of.</summary>
public sealed class BodyTests
{
    private const string Parts = """
        format = 1
        title = "Invented: a body of one part"
        [vehicle]
        spin_axis = "z"
        [[part]]
        name = "it"
        mass = "100 kg"
        {0}
        [spin]
        rate = "30 rpm"
        [despin]
        hub_radius = "500 mm"
        weights = 2
        weight_mass = "0.5 kg"
        final_rate = "0 rpm"
        let_go = "radial"
        """;

    /// <summary>Handbook formulas (Beer and Johnston, inside cover, from memory, not read) for 100 kg: about the axis, across it.</summary>
    [Theory]
    [InlineData("shape = \"cylinder\"\nradius = \"0.5 m\"\nheight = \"1.2 m\"", 12.5)]
    [InlineData("shape = \"tube\"\nradius = \"0.5 m\"\ninner_radius = \"0.4 m\"\nheight = \"1.2 m\"", 20.5)]
    [InlineData("shape = \"cone\"\nradius = \"0.5 m\"\nheight = \"1.2 m\"", 7.5)]
    [InlineData("shape = \"sphere\"\nradius = \"0.5 m\"", 10)]
    [InlineData("shape = \"shell\"\nradius = \"0.5 m\"", 100 / 6.0)]
    [InlineData("shape = \"disc\"\nradius = \"0.5 m\"", 12.5)]
    [InlineData("shape = \"box\"\nsize = [\"0.5 m\", \"0.4 m\", \"0.3 m\"]", 100 * 0.41 / 12)]
    [InlineData("shape = \"box\"\nsize = [\"0.5 m\", \"0.4 m\", \"0.3 m\"]\nturned = [\"90 deg\", \"0 deg\", \"0 deg\"]", 100 * 0.34 / 12)]
    [InlineData("shape = \"cylinder\"\nradius = \"0.5 m\"\nheight = \"1.2 m\"\nturned = [\"0 deg\", \"90 deg\", \"0 deg\"]", 18.25)]
    [InlineData("shape = \"cylinder\"\nradius = \"0.5 m\"\nheight = \"1.2 m\"\ngrowth = \"10 %\"", 13.75)]
    [InlineData("shape = \"rod\"\nheight = \"1.2 m\"\nturned = [\"90 deg\", \"0 deg\", \"0 deg\"]", 12)]
    [InlineData("shape = \"cylinder\"\nradius = \"0.5 m\"\nheight = \"1.2 m\"\nat = [\"3 mm\", \"0 mm\", \"5 m\"]", 12.5)]
    public void A_part_has_the_spin_inertia_of_the_handbook(string part, double inertia)
    {
        Invocation run = Invocation.WithInput(Parts.Replace("{0}", part, StringComparison.Ordinal), "check", "-", "--json");

        Assert.True(run.ExitCode == 0, run.Error);
        // Turning by 90 degrees and the parallel-axis shift round a few times.
        Assert.InRange(run.Json["spin_inertia_kg_m2"]!.GetValue<double>() / inertia, 1 - 1e-12, 1 + 1e-12);
    }

    [Fact]
    public void Parts_in_one_place_and_holes_in_none_are_warned_of()
    {
        const string Two = """
            shape = "cylinder"
            radius = "0.5 m"
            height = "1.2 m"
            [[part]]
            name = "deck"
            mass = "10 kg"
            shape = "cylinder"
            radius = "0.4 m"
            height = "0.1 m"
            at = ["0 m", "0 m", "0.6 m"]
            [[part]]
            name = "bore"
            hole = true
            mass = "1 kg"
            shape = "cylinder"
            radius = "0.1 m"
            height = "0.4 m"
            at = ["0 m", "0 m", "-0.6 m"]
            """;
        Invocation run = Invocation.WithInput(Parts.Replace("{0}", Two, StringComparison.Ordinal), "check", "-");

        Assert.Contains("\"it\" and \"deck\" take up the same space", run.Error, StringComparison.Ordinal);
        Assert.Contains("\"bore\" takes away where no material is", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, run.ExitCode);
    }

    [Fact]
    public void A_turn_is_about_x_then_y_then_z_of_the_body()
    {
        // A rod along z turned by 90 degrees about x points along -y; turned then about z by 90 degrees it points along x.
        // In the other order it would stay along y.
        string part = "shape = \"rod\"\nheight = \"1.2 m\"\nturned = [\"90 deg\", \"0 deg\", \"90 deg\"]";
        string text = Parts.Replace("{0}", part, StringComparison.Ordinal).Replace("spin_axis = \"z\"", "spin_axis = \"y\"", StringComparison.Ordinal);

        Assert.Equal(12, Invocation.WithInput(text, "check", "-", "--json").Json["spin_inertia_kg_m2"]!.GetValue<double>(), 1e-12);
    }

    [Fact]
    public void A_sphere_less_a_sphere_is_a_hollow_one()
    {
        // m = 4/3 π ρ r³ and 2/5 m r² each: 8/15 π ρ (R⁵ - r⁵).
        string part = """
            shape = "sphere"
            density = "2700 kg/m^3"
            radius = "0.5 m"
            [[part]]
            name = "bore"
            shape = "sphere"
            density = "2700 kg/m^3"
            radius = "0.4 m"
            hole = true
            """;
        string text = Parts.Replace("mass = \"100 kg\"\n", "", StringComparison.Ordinal).Replace("{0}", part, StringComparison.Ordinal);
        JsonNode json = Invocation.WithInput(text, "check", "-", "--json").Json;

        double expected = 8.0 / 15 * Math.PI * 2700 * (Math.Pow(0.5, 5) - Math.Pow(0.4, 5));
        Assert.InRange(json["spin_inertia_kg_m2"]!.GetValue<double>() / expected, 1 - 1e-12, 1 + 1e-12);
        Assert.Equal(["added", "subtracted"], json["parts"]!.AsArray().Select(p => p!["mass_is"]!.GetValue<string>()));
    }

    [Fact]
    public void A_mesh_beside_the_case_file_is_read_in_its_stated_unit()
    {
        using var place = new Workplace();
        place.Write("cube.stl", Cube(600));
        string text = Parts.Replace("{0}", "shape = \"mesh\"\nfile = \"cube.stl\"\nfile_unit = \"mm\"", StringComparison.Ordinal);
        Invocation run = Invocation.Of("check", place.Write("case.toml", text), "--json");

        // 100 kg, edge a = 0.6 m: m a²/6.
        Assert.True(run.ExitCode == 0, run.Error);
        Assert.InRange(run.Json["spin_inertia_kg_m2"]!.GetValue<double>() / (100 * 0.36 / 6), 1 - 1e-6, 1 + 1e-6);
    }

    [Theory]
    [InlineData("missing.stl", "there is no such file")]
    [InlineData("open.stl", "the mesh is refused")]
    [InlineData("text.stl", "the mesh is refused")]
    [InlineData("folder", "cannot be read")]
    public void A_mesh_that_is_no_solid_is_refused_at_its_key(string file, string says)
    {
        using var place = new Workplace();
        Directory.CreateDirectory(place.PathOf("folder"));
        string cube = Cube(600);
        place.Write("open.stl", string.Concat(cube.AsSpan(0, cube.LastIndexOf("facet normal", StringComparison.Ordinal)), "endsolid\n"));
        place.Write("text.stl", "this is no mesh");
        string text = Parts.Replace("{0}", $"shape = \"mesh\"\nfile = \"{file}\"\nfile_unit = \"mm\"", StringComparison.Ordinal);
        string path = place.Write("case.toml", text);
        Invocation run = Invocation.Of("size", path);

        Assert.Equal(2, run.ExitCode);
        string line = Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith($"{path}:{SampleCase.LineOf(text, "file =")}:", line, StringComparison.Ordinal);
        Assert.Contains("part[0].file", line, StringComparison.Ordinal);
        Assert.Contains(says, line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hole_larger_than_its_body_is_refused()
    {
        string text = Parts.Replace("{0}", "shape = \"point\"\nhole = true", StringComparison.Ordinal);
        Invocation run = Invocation.WithInput(text, "check", "-");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("more is subtracted than there is", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sign_convention_of_products_makes_a_difference_to_the_tilt_but_not_to_its_size()
    {
        string other = SampleCase.With("\"tensor element\"", "\"positive integral\"");
        double one = Invocation.WithInput(SampleCase.Text, "check", "-", "--json").Json["principal_axis_tilt_rad"]!.GetValue<double>();
        double two = Invocation.WithInput(other, "check", "-", "--json").Json["principal_axis_tilt_rad"]!.GetValue<double>();

        Assert.InRange(one, 1e-4, 0.1);
        // All three products turn round: a mirror image would keep the size if only two did; here it is nearly kept.
        Assert.Equal(one, two, 1e-3);
    }

    [Fact]
    public void Inertia_about_the_origin_is_moved_to_the_centre_of_mass()
    {
        // 120 kg at 30 mm off the axis: 0.108 kg m² less.
        string text = SampleCase.With("\"centre of mass\"", "\"origin\"").Replace("[\"0 mm\", \"0 mm\", \"250 mm\"]", "[\"30 mm\", \"0 mm\", \"0 mm\"]", StringComparison.Ordinal);
        Invocation run = Invocation.WithInput(text, "check", "-", "--json");

        Assert.Equal(17.5 - 0.108, run.Json["spin_inertia_kg_m2"]!.GetValue<double>(), 1e-12);
        Assert.Contains(run.Json["warnings"]!.AsArray(), w => w!["key"]!.GetValue<string>() == "vehicle.centre");
    }

    [Theory]
    [InlineData("spin_axis     = \"z\"", "spin_axis = \"x\"", "vehicle.spin_axis", "axis of least inertia")]
    [InlineData("spin_axis     = \"z\"", "spin_axis = \"y\"", "vehicle.spin_axis", "axis of intermediate inertia")]
    [InlineData("xz = \"-0.02 kg*m^2\"", "xz = \"0.4 kg*m^2\"", "vehicle.inertia", "tilted")]
    [InlineData("hub_radius  = \"420 mm +/- 0.2 mm max\"", "hub_radius = \"300 mm\"", "despin.hub_radius", "mass must lie outside the hub")]
    [InlineData("[\"0 mm\", \"0 mm\", \"250 mm\"]", "[\"20 mm\", \"0 mm\", \"250 mm\"]", "vehicle.centre", "off the spin axis")]
    public void What_a_reviewer_should_know_is_a_warning_with_its_place(string piece, string replacement, string key, string says)
    {
        string text = SampleCase.With(piece, replacement);
        foreach (string verb in new[] { "check", "size" })
        {
            Invocation run = Invocation.WithInput(text, verb, "-", "--json");

            // A body so far out of balance may miss a requirement too.
            Assert.InRange(run.ExitCode, 0, 1);
            Assert.Empty(run.Error);
            JsonNode warning = Assert.Single(run.Json["warnings"]!.AsArray(), w => w!["message"]!.GetValue<string>().Contains(says, StringComparison.Ordinal))!;
            Assert.Equal(key, warning["key"]!.GetValue<string>());
            Assert.Equal("warning", warning["severity"]!.GetValue<string>());
        }

        Assert.Contains("warning: " + key, Invocation.WithInput(text, "size", "-").Error, StringComparison.Ordinal);
    }

    private static string Cube(double edge)
    {
        // Six faces of two triangles, wound anticlockwise from outside.
        int[][] faces = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
        var text = new StringBuilder("solid cube\n");
        foreach (int[] face in faces)
        {
            foreach (int[] triangle in new[] { new[] { face[0], face[1], face[2] }, [face[0], face[2], face[3]] })
            {
                text.Append("facet normal 0 0 0\nouter loop\n");
                foreach (int corner in triangle)
                {
                    text.Append(System.Globalization.CultureInfo.InvariantCulture, $"vertex {edge * (corner & 1)} {edge * ((corner >> 1) & 1)} {edge * (corner >> 2)}\n");
                }

                text.Append("endloop\nendfacet\n");
            }
        }

        return text.Append("endsolid cube\n").ToString();
    }
}
