using Momentum.Cases;

namespace Momentum.Tool.Files;

/// <summary>
/// The files beside a case file, so that a case and its meshes can be moved together. A case may come from anybody, so it
/// reads plain files in its own folder and those below it, links followed, and in a folder that the user named; no other.
/// </summary>
/// <param name="folder">The folder of the case file, from where its paths are told; empty for the working directory.</param>
/// <param name="meshFolder">Another folder, without links, that files may come from; null if there is none.</param>
/// <param name="opened">Takes what was opened.</param>
internal sealed class CaseFolder(string folder, string? meshFolder, List<InputFile> opened) : ICaseFiles
{
    /// <inheritdoc/>
    public Stream Open(string name)
    {
        if (name.Contains('\0', StringComparison.Ordinal))
        {
            throw new IOException("it is not a path");
        }

        string real = RealPath.Of(Path.Combine(folder, name));
        if (!IsWithin(real, RealPath.Of(folder)) && !(meshFolder is not null && IsWithin(real, meshFolder)))
        {
            throw new UnauthorizedAccessException("it lies outside the case file's folder, and no other is read unasked: name its folder with --meshes, or copy it");
        }

        FileStatus status = FileStatus.Of(real) ?? throw new FileNotFoundException("there is no such file", Path.Combine(folder, name));
        if (status.Kind != FileKind.Plain)
        {
            throw new IOException(status.Kind == FileKind.Directory ? "it is a directory" : "it is a pipe or a device, not a plain file");
        }

        var stream = new FileStream(real, FileMode.Open, FileAccess.Read, FileShare.Read);
        opened.Add(new InputFile($"the mesh {name} of the case", status.Identity));
        return stream;
    }

    private static bool IsWithin(string path, string home) => path.StartsWith(
        Path.EndsInDirectorySeparator(home) ? home : home + Path.DirectorySeparatorChar,
        OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal);
}
