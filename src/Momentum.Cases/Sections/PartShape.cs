namespace Momentum.Cases.Sections;

/// <summary>The shape of a part.</summary>
internal enum PartShape
{
    /// <summary>A point mass.</summary>
    Point,

    /// <summary>A thin straight rod along z: height.</summary>
    Rod,

    /// <summary>A thin flat disc across z: radius.</summary>
    Disc,

    /// <summary>A solid cylinder along z: radius, height.</summary>
    Cylinder,

    /// <summary>A hollow cylinder along z: radius, inner_radius, height.</summary>
    Tube,

    /// <summary>A solid cone along z, apex up: radius, height.</summary>
    Cone,

    /// <summary>A solid ball: radius.</summary>
    Sphere,

    /// <summary>A thin hollow ball: radius.</summary>
    Shell,

    /// <summary>A solid box: size.</summary>
    Box,

    /// <summary>A closed triangle mesh: file, file_unit.</summary>
    Mesh,
}
