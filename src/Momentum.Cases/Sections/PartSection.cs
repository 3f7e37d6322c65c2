using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>One solid of the body.</summary>
internal sealed record PartSection : Section
{
    [Key("Name of the part, for messages and the report.", Example = "\"motor case\"", Required = true)]
    public string Name { get; init; } = "";

    [Key("Shape. A body of revolution lies along z before it is turned.", Example = "\"cylinder\"", Required = true)]
    public PartShape Shape { get; init; }

    [Key("Mass of the part. Give mass or density.", Example = "\"48 kg +/- 1 %\"", MoreThan = "0 kg")]
    public Stated<Mass>? Mass { get; init; }

    [Key("Density of a solid part, in place of its mass.", Example = "\"2700 kg/m^3\"", MoreThan = "0 kg/m^3")]
    public Stated<Density>? Density { get; init; }

    [Key("Outer radius.", Example = "\"310 mm\"", MoreThan = "0 mm")]
    public Stated<Length>? Radius { get; init; }

    [Key("Inner radius of a tube.", Example = "\"295 mm\"", MoreThan = "0 mm")]
    public Stated<Length>? InnerRadius { get; init; }

    [Key("Length along the part's own z.", Example = "\"640 mm\"", MoreThan = "0 mm")]
    public Stated<Length>? Height { get; init; }

    [Key("Edges of a box along its own x, y and z.", Example = "[\"400 mm\", \"300 mm\", \"120 mm\"]", MoreThan = "0 mm")]
    public IReadOnlyList<Stated<Length>>? Size { get; init; }

    [Key("Mesh file (binary or ASCII STL), by its path from the case file's folder: in that folder or below it, or in one named with --meshes.", Example = "\"bracket.stl\"")]
    public string? File { get; init; }

    [Key("Unit of the mesh file's coordinates.", Example = "\"mm\"")]
    public MeshUnit? FileUnit { get; init; }

    [Key("Where the part's own origin lies, from the body origin: x, y, z. That is its centre of mass; for a cone the centre of its base, for a mesh the file's origin. Left out: at the body origin.", Example = "[\"0 mm\", \"0 mm\", \"320 mm\"]")]
    public IReadOnlyList<Stated<Length>>? At { get; init; }

    [Key("Turned about the body's x axis, then y, then z, right-handed, before it is placed. Left out: not turned.", Example = "[\"90 deg\", \"0 deg\", \"0 deg\"]")]
    public IReadOnlyList<Stated<Angle>>? Turned { get; init; }

    [Key("Growth allowance: the mass is raised by this share.", Example = "\"5 %\"", AtLeast = "0", AtMost = "1")]
    public Stated<Ratio>? Growth { get; init; }

    [Key("True if the part is a hole: its mass and inertia are taken away. A hole needs the density of what it is cut from, or the mass removed.", Example = "true")]
    public bool? Hole { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (Mass is null == Density is null)
        {
            findings.Error(
                this, Mass is null ? null : nameof(Density), Mass is null ? "neither mass nor density is given" : "mass and density are both given",
                "one of mass and density", Mass is null ? "Add for example mass = \"48 kg\"." : "Remove one of the two.");
        }

        string shape = KeyDescription.Phrase(Shape.ToString());
        if (Density is not null && Shape is PartShape.Point or PartShape.Rod or PartShape.Disc or PartShape.Shell)
        {
            findings.Error(
                this, nameof(Density), $"a {shape} has no volume, so that a density gives it no mass",
                "mass", "Give its mass, for example mass = \"1.2 kg\".");
        }

        string[] needed = Shape switch
        {
            PartShape.Point => [],
            PartShape.Rod => [nameof(Height)],
            PartShape.Disc or PartShape.Sphere or PartShape.Shell => [nameof(Radius)],
            PartShape.Cylinder or PartShape.Cone => [nameof(Radius), nameof(Height)],
            PartShape.Tube => [nameof(Radius), nameof(InnerRadius), nameof(Height)],
            PartShape.Box => [nameof(Size)],
            _ => [nameof(File), nameof(FileUnit)],
        };
        (string Name, object? Value)[] sizes =
        [
            (nameof(Radius), Radius), (nameof(InnerRadius), InnerRadius), (nameof(Height), Height), (nameof(Size), Size), (nameof(File), File), (nameof(FileUnit), FileUnit),
        ];
        string wanted = needed.Length == 0 ? "no size" : string.Join(", ", needed.Select(KeyDescription.SpellingOf));
        foreach ((string name, object? value) in sizes)
        {
            string key = KeyDescription.SpellingOf(name);
            if (value is null && needed.Contains(name))
            {
                KeyDescription description = SectionDescription.Of(typeof(PartSection)).Keys.First(k => k.Name == key);
                findings.Error(this, name, $"a {shape} needs it", $"for a {shape}: {wanted}", $"Add to this [[part]] for example {key} = {description.Example}.");
            }
            else if (value is not null && !needed.Contains(name))
            {
                findings.Error(this, name, $"a {shape} has no {key}", $"for a {shape}: {wanted}", "Remove it, or change the shape.");
            }
        }

        if (Shape == PartShape.Tube && Radius is not null && InnerRadius is not null && InnerRadius.Value.Meters >= Radius.Value.Meters)
        {
            findings.Error(this, nameof(InnerRadius), "it is not less than the outer radius", "more than 0 and less than radius", $"Write for example inner_radius = \"{Radius.Value.Millimeters * 0.95:0.###} mm\".");
        }
    }
}
