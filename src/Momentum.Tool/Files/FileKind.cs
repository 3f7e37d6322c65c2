namespace Momentum.Tool.Files;

/// <summary>What stands under a name in the file system, links followed.</summary>
internal enum FileKind
{
    /// <summary>A plain file.</summary>
    Plain,

    Directory,

    /// <summary>A named or unnamed pipe.</summary>
    Pipe,

    /// <summary>A terminal, the null device and their like: what is written to it goes away.</summary>
    CharacterDevice,

    /// <summary>A disk.</summary>
    BlockDevice,

    Socket,
}
