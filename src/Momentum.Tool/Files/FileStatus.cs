namespace Momentum.Tool.Files;

/// <summary>What the system says of an existing file.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Identity">Which it is.</param>
/// <param name="Owner">The owner and the group by their numbers; null where the system's numbers are not read.</param>
internal sealed record FileStatus(FileKind Kind, FileIdentity Identity, (uint User, uint Group)? Owner)
{
    /// <summary>The status of what a path leads to, links followed; null if there is nothing.</summary>
    /// <exception cref="IOException">The system cannot say.</exception>
    /// <exception cref="UnauthorizedAccessException">A folder on the way may not be searched.</exception>
    /// <remarks>
    /// On Linux the system is asked. Elsewhere .NET has no means to tell a pipe from a plain file nor one hard link from
    /// another: there links of names are followed, and what lies under <c>/dev</c> counts as a device.
    /// </remarks>
    public static FileStatus? Of(string path)
    {
        if (OperatingSystem.IsLinux())
        {
            return Linux.StatusOf(path);
        }

        if (Directory.Exists(path))
        {
            return new FileStatus(FileKind.Directory, new FileIdentity(0, 0, RealPath.Of(path)), null);
        }

        if (!File.Exists(path))
        {
            return null;
        }

        string real = RealPath.Of(path);
        bool isDevice = real.StartsWith("/dev/", StringComparison.Ordinal) || real.StartsWith(@"\\.\", StringComparison.Ordinal);
        return new FileStatus(isDevice ? FileKind.CharacterDevice : FileKind.Plain, new FileIdentity(0, 0, OperatingSystem.IsWindows() || OperatingSystem.IsMacOS() ? real.ToUpperInvariant() : real), null);
    }
}
