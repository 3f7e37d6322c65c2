namespace Momentum.Inertia;

/// <summary>What is wrong with the space that the parts of an assembly take up.</summary>
public enum PartConflictKind
{
    /// <summary>Two parts take up the same space, which counts twice.</summary>
    Overlap,

    /// <summary>A hole takes away where no material is, or where another hole has taken it away already.</summary>
    HoleOutsideMaterial,
}
