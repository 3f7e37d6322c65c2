namespace Momentum.Cases;

/// <summary>
/// Opens the files that a case names, such as the mesh of a part. Where they are is the caller's: a folder, an upload, memory.
/// </summary>
public interface ICaseFiles
{
    /// <summary>Opens one for reading, from its beginning; the reader closes it.</summary>
    /// <param name="name">The name as the case states it; it may come from anybody, so a file system must be guarded against it.</param>
    /// <exception cref="FileNotFoundException">There is no such file; its <see cref="FileNotFoundException.FileName"/>, if set, says where it was looked for.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    Stream Open(string name);
}
