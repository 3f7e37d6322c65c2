using Momentum.Inertia;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Fuzz.Readers;

/// <summary>An STL file. It is refused, or is a solid with a volume, a centroid and an inertia that a body can have.</summary>
internal sealed class StlMesh : Reader
{
    internal override string Name => "stl";

    internal override IEnumerable<string> Words => ["solid", "facet normal ", "outer loop\n", "vertex ", "endloop\n", "endfacet\n", "endsolid"];

    internal override void Read(byte[] input)
    {
        try
        {
            TriangleMesh mesh = TriangleMesh.ReadStl(input, LengthUnit.Millimeter);
            Holds(mesh.Volume.CubicMeters > 0 && double.IsFinite(mesh.Volume.CubicMeters), "A solid has no volume.");
            Holds(mesh.TriangleCount >= 4 && mesh.VertexCount >= 4, "A solid has fewer than four faces or corners.");
            Solid solid = Solid.Mesh(Density.FromKilogramsPerCubicMeter(1000), mesh);
            Holds(solid.Mass.Kilograms > 0, "A solid has no mass.");
        }
        catch (InvalidDataException)
        {
            // The documented refusal.
        }
        catch (ComputationRefusedException)
        {
            // A solid too small or too large for its inertia to be trusted.
        }
    }
}
