using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using Momentum.Cases.Sections;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Cases.Answers;

/// <summary>Assembles the body of a case from its parts.</summary>
internal static class PartsBody
{
    /// <summary>The body; null if it was found wanting, with the reason among the findings.</summary>
    public static SpinningBody? Assemble(Case given, ICaseFiles? files, Findings findings)
    {
        var meshes = new TriangleMesh?[given.Part.Count];
        for (int i = 0; i < meshes.Length; i++)
        {
            PartSection part = given.Part[i];
            try
            {
                meshes[i] = part.Shape == PartShape.Mesh ? MeshOf(part, files, findings) : null;
                if (part.Shape != PartShape.Mesh || meshes[i] is not null)
                {
                    SolidOf(part, meshes[i]);
                }
            }
            catch (ArgumentException refusal)
            {
                findings.Error(part, null, BodyJudge.Clause(refusal.Message), "a solid with volume", "Check its sizes and their units.");
            }
        }

        if (findings.HasErrors)
        {
            return null;
        }

        try
        {
            Assembly<Body> assembly = Joined(given.Part, meshes);
            MassProperties<Body> whole = assembly.Build();
            WarnOfConflicts(given, assembly, findings);
            Direction<Body> axis = BodyJudge.DirectionOf(given.Vehicle.SpinAxis);
            return new SpinningBody(whole.Mass, whole.CentreOfMass, axis, whole.Inertia.AboutAxis(axis), whole.Inertia) { Parts = assembly.Contributions(), Meshes = meshes };
        }
        catch (ComputationRefusedException refusal)
        {
            findings.Error(
                given, nameof(Case.Part), $"the parts make no body: {BodyJudge.Clause(refusal.Message)}", "parts that some body is made of",
                "Check masses, sizes and places, and that every hole lies inside material.");
            return null;
        }
    }

    /// <summary>The parts put in their places; not yet built.</summary>
    /// <exception cref="ArgumentException">A part is no solid.</exception>
    public static Assembly<Body> Joined(IReadOnlyList<PartSection> parts, IReadOnlyList<TriangleMesh?> meshes)
    {
        var assembly = new Assembly<Body>();
        for (int i = 0; i < parts.Count; i++)
        {
            PartSection part = parts[i];
            Solid solid = SolidOf(part, meshes[i]);
            Position<Body> at = part.At is [var x, var y, var z] ? Position<Body>.Of(x.Value, y.Value, z.Value) : Position<Body>.Origin;
            Ratio growth = part.Growth?.Value ?? Ratio.Zero;
            if (part.Hole is true)
            {
                assembly.Subtract(part.Name, solid, at, Turned(part.Turned), growth);
            }
            else
            {
                assembly.Add(part.Name, solid, at, Turned(part.Turned), growth);
            }
        }

        return assembly;
    }

    private static void WarnOfConflicts(Case given, Assembly<Body> assembly, Findings findings)
    {
        foreach (PartConflict<Body> conflict in assembly.Conflicts())
        {
            string place = FormattableString.Invariant($"at ({conflict.At.X.Meters:g3}, {conflict.At.Y.Meters:g3}, {conflict.At.Z.Meters:g3}) m, in about {conflict.Volume.Liters:g2} L");
            findings.Warn(
                given, nameof(Case.Part),
                conflict.Kind == PartConflictKind.Overlap
                    ? $"the parts \"{conflict.Part}\" and \"{conflict.Other}\" take up the same space {place}, which is counted twice"
                    : $"the hole \"{conflict.Part}\" takes away where no material is, {place}",
                "Check places and sizes, or make a hole for the part that lies within another.");
        }
    }

    private static void WarnOfCrossings(PartSection part, TriangleMesh mesh, Findings findings)
    {
        // The search takes some seconds for so many.
        const int MostFacets = 200_000;
        if (mesh.TriangleCount > MostFacets)
        {
            findings.Warn(
                part, nameof(PartSection.File), FormattableString.Invariant($"the mesh has {mesh.TriangleCount} facets; whether it cuts through itself is looked at up to {MostFacets}"),
                "Export it coarser, or make sure of it where it comes from.");
            return;
        }

        try
        {
            foreach (MeshCrossing crossing in mesh.Crossings(1))
            {
                findings.Warn(
                    part, nameof(PartSection.File),
                    FormattableString.Invariant($"the mesh cuts through itself or encloses some space twice, by facets {crossing.First} and {crossing.Second} at ({crossing.At.X.Meters:g4}, {crossing.At.Y.Meters:g4}, {crossing.At.Z.Meters:g4}) m: that space counts twice"),
                    "Unite its bodies where it comes from, and export it anew.");
            }
        }
        catch (ComputationRefusedException refusal)
        {
            findings.Warn(part, nameof(PartSection.File), BodyJudge.Clause(refusal.Message), "Or make sure of it where it comes from.");
        }
    }

    private static Solid SolidOf(PartSection part, TriangleMesh? mesh) => part switch
    {
        { Shape: PartShape.Point } => Solid.Point(part.Mass!.Value),
        { Shape: PartShape.Rod } => Solid.Rod(part.Mass!.Value, part.Height!.Value),
        { Shape: PartShape.Disc } => Solid.Disc(part.Mass!.Value, part.Radius!.Value),
        { Shape: PartShape.Shell } => Solid.SphericalShell(part.Mass!.Value, part.Radius!.Value),
        { Shape: PartShape.Cylinder, Mass: { } mass } => Solid.Cylinder(mass.Value, part.Radius!.Value, part.Height!.Value),
        { Shape: PartShape.Cylinder } => Solid.Cylinder(part.Density!.Value, part.Radius!.Value, part.Height!.Value),
        { Shape: PartShape.Tube, Mass: { } mass } => Solid.Tube(mass.Value, part.Radius!.Value, part.InnerRadius!.Value, part.Height!.Value),
        { Shape: PartShape.Tube } => Solid.Tube(part.Density!.Value, part.Radius!.Value, part.InnerRadius!.Value, part.Height!.Value),
        { Shape: PartShape.Cone, Mass: { } mass } => Solid.Cone(mass.Value, part.Radius!.Value, part.Height!.Value),
        { Shape: PartShape.Cone } => Solid.Cone(part.Density!.Value, part.Radius!.Value, part.Height!.Value),
        { Shape: PartShape.Sphere, Mass: { } mass } => Solid.Sphere(mass.Value, part.Radius!.Value),
        { Shape: PartShape.Sphere } => Solid.Sphere(part.Density!.Value, part.Radius!.Value),
        { Shape: PartShape.Box, Mass: { } mass, Size: [var x, var y, var z] } => Solid.Box(mass.Value, x.Value, y.Value, z.Value),
        { Shape: PartShape.Box, Size: [var x, var y, var z] } => Solid.Box(part.Density!.Value, x.Value, y.Value, z.Value),
        { Mass: { } mass } => Solid.Mesh(mass.Value, mesh!),
        _ => Solid.Mesh(part.Density!.Value, mesh!),
    };

    private static TriangleMesh? MeshOf(PartSection part, ICaseFiles? files, Findings findings)
    {
        if (files is null)
        {
            findings.Error(part, nameof(PartSection.File), "the case is read without any files beside it", "a shape whose sizes the case states", "Give the reader the files that the case names, or state the part's shape and sizes.");
            return null;
        }

        LengthUnit unit = part.FileUnit switch
        {
            MeshUnit.Mm => LengthUnit.Millimeter,
            MeshUnit.Cm => LengthUnit.Centimeter,
            MeshUnit.In => LengthUnit.Inch,
            MeshUnit.Ft => LengthUnit.Foot,
            _ => LengthUnit.Meter,
        };
        try
        {
            using Stream stream = files.Open(part.File!);
            var mesh = TriangleMesh.ReadStl(stream, unit);
            WarnOfCrossings(part, mesh, findings);
            return mesh;
        }
        catch (InvalidDataException refusal)
        {
            findings.Error(part, nameof(PartSection.File), $"the mesh is refused: {BodyJudge.Clause(refusal.Message)}", "a closed, consistently wound STL mesh", "Mend or export the mesh anew.");
        }
        catch (FileNotFoundException failure)
        {
            findings.Error(part, nameof(PartSection.File), $"there is no such file as {failure.FileName ?? part.File}", "a path from the case file's directory", "Check the path.");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            findings.Error(part, nameof(PartSection.File), $"{part.File} cannot be read: {failure.Message.TrimEnd('.')}", "a readable STL file", "Check the path and the permissions.");
        }

        return null;
    }

    /// <summary>About the body's x axis first, then y, then z.</summary>
    private static Rotation<Part, Body> Turned(IReadOnlyList<Stated<Angle>>? turned) => turned is [var x, var y, var z]
        ? Rotation<Part, Part>.About(Direction<Part>.XAxis, x.Value)
            .Then(Rotation<Part, Part>.About(Direction<Part>.YAxis, y.Value))
            .Then(Rotation<Part, Body>.About(Direction<Part>.ZAxis, z.Value))
        : Rotation<Part, Body>.Identity;
}
