namespace Momentum.Cases.Sections;

/// <summary>The unit of a mesh file's coordinates, which such files do not say themselves.</summary>
internal enum MeshUnit
{
    Mm,
    Cm,
    M,
    In,
    Ft,
}
