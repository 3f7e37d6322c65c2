using System.Runtime.InteropServices;
using System.Text;
using System.Text.RegularExpressions;
using Momentum.Cases;
using Momentum.Tool.Commands;

namespace Momentum.Tool.Files;

/// <summary>
/// Where a result goes: standard output, a pipe or device that is written through, or a file that is replaced whole, so that
/// a reader sees the old file or the new one and never half of one. The name may be a link: what it leads to is written, and
/// the link stays.
/// </summary>
internal sealed partial class Destination
{
    private static readonly UTF8Encoding _utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly string _shown;
    private readonly string _path;
    private readonly FileStatus? _existing;
    private readonly TextWriter? _stream;
    private readonly bool _replaces;

    private Destination(string shown, string path, FileStatus? existing, TextWriter? stream, bool replaces)
    {
        _shown = shown;
        _path = path;
        _existing = existing;
        _stream = stream;
        _replaces = replaces;
    }

    // Asked again at the end, when another may have made the file meanwhile.
    private bool MayReplace { get; init; }

    /// <summary>Whether the result goes where results go if no file is named.</summary>
    public bool IsStandardOutput { get; private init; }

    /// <summary>Looks where a name leads, and refuses at once what could not be written in the end.</summary>
    /// <param name="path">The name; null or <c>-</c> is standard output.</param>
    /// <param name="streams">The streams of the program.</param>
    /// <param name="replace">Whether an existing file may be replaced.</param>
    /// <exception cref="UsageException">It cannot be written, or it exists and must not be replaced.</exception>
    public static Destination Of(string? path, Streams streams, bool replace = true)
    {
        if (path is null or "-")
        {
            return StandardOutput(streams);
        }

        string shown = Printable.Line(path);
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
        {
            throw new UsageException($"\"{shown}\" is not a path to write to", "Name a file, for example --output result.csv.");
        }

        return Trying(shown, () =>
        {
            string real = RealPath.Of(path);
            switch (RealPath.OwnDescriptor(real))
            {
                case 1:
                    return StandardOutput(streams);
                case 2:
                    return new Destination(shown, real, null, streams.Error, replaces: false);
            }

            FileStatus? existing = FileStatus.Of(real);
            if (existing?.Kind is FileKind.Directory || Path.EndsInDirectorySeparator(path))
            {
                throw new UsageException($"{shown} is a directory", "Name a file in it.");
            }

            if (existing?.Kind is FileKind.BlockDevice or FileKind.Socket)
            {
                throw new UsageException($"{shown} is {(existing.Kind == FileKind.Socket ? "a socket" : "a disk")}, not a file", "Name a file.");
            }

            // Writing to a descriptor is the shell's own redirection, so what it leads to is never replaced.
            if (existing is { Kind: not FileKind.Plain } || RealPath.OwnDescriptor(real) is not null)
            {
                return new Destination(shown, real, existing, null, replaces: false);
            }

            if (existing is not null && !replace)
            {
                throw new UsageException($"{shown} exists already and was left as it is", "Choose another name, or add --force to replace it.");
            }

            if (existing is not null)
            {
                RefuseReadOnly(real, shown);
            }
            else if (!Directory.Exists(Path.GetDirectoryName(real)))
            {
                throw new DirectoryNotFoundException();
            }

            return new Destination(shown, real, existing, null, replaces: true) { MayReplace = replace };
        });
    }

    /// <summary>Refuses if the result would take the place of something it was made from, under whatever name.</summary>
    /// <exception cref="UsageException">It would.</exception>
    public void KeepOff(IEnumerable<InputFile> inputs)
    {
        foreach (InputFile input in inputs)
        {
            if (_existing is { Kind: FileKind.Plain } && _existing.Identity == input.Identity)
            {
                throw new UsageException($"{_shown} is {input.What} itself and was left as it is", "Name another file for the result.");
            }
        }
    }

    /// <summary>Writes the result.</summary>
    /// <param name="write">Writes all of it; if it throws, the file is left as it was.</param>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Write(Action<TextWriter> write)
    {
        if (_stream is not null)
        {
            write(_stream);
        }
        else if (_replaces)
        {
            Trying(_shown, () => Replace(write));
        }
        else
        {
            Trying(_shown, () => Through(write));
        }
    }

    /// <summary>Writes a text.</summary>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Write(string text) => Write(writer => writer.Write(text));

    private static Destination StandardOutput(Streams streams) =>
        new("standard output", "-", FileStatusOfOutput(streams), streams.Output, replaces: false) { IsStandardOutput = true };

    /// <summary>Known only of the program's own standard output: by it a result appended to its own case is told.</summary>
    private static FileStatus? FileStatusOfOutput(Streams streams) => streams.OutputPath is { } path ? FileStatus.Of(path) : null;

    private static void RefuseReadOnly(string path, string shown)
    {
        // To the system's administrator every file opens, but whoever took the permission away meant it.
        bool hasWriters = OperatingSystem.IsWindows() || (File.GetUnixFileMode(path) & (UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite)) != 0;
        try
        {
            if (hasWriters)
            {
                new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete).Dispose();
                return;
            }
        }
        catch (UnauthorizedAccessException)
        {
        }

        throw new UsageException($"{shown} is read-only and was left as it is", "Give yourself write permission, or choose another name.");
    }

    private void Through(Action<TextWriter> write)
    {
        FileMode mode = _existing?.Kind is FileKind.Plain or null ? FileMode.Append : FileMode.Open;
        using var stream = new FileStream(_path, mode, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        using var writer = new StreamWriter(stream, _utf8, 1 << 16) { NewLine = "\n" };
        write(new PrintableWriter(writer));
    }

    private void Replace(Action<TextWriter> write)
    {
        string folder = Path.GetDirectoryName(_path)!;
        RemoveLeftovers(folder);
        string beside = Path.Join(folder, $".momentum-{Guid.NewGuid():N}.tmp");

        // The lock that opening takes tells another run that this is no leftover.
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Share = FileShare.Delete, BufferSize = 0 };
        if (_existing is not null && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, _ => File.Delete(beside));
        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, _ => File.Delete(beside));
        using PosixSignalRegistration hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, _ => File.Delete(beside));
        try
        {
            using var stream = new FileStream(beside, options);
            using (var writer = new StreamWriter(stream, _utf8, 1 << 16, leaveOpen: true) { NewLine = "\n" })
            {
                write(new PrintableWriter(writer));
            }

            KeepOwnerAndMode(stream, beside);
            stream.Flush(flushToDisk: true);
            File.Move(beside, _path, MayReplace);
            if (OperatingSystem.IsLinux())
            {
                Linux.SyncFolder(folder);
            }
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>The new file is the old one's successor in all but its content.</summary>
    private void KeepOwnerAndMode(FileStream successor, string beside)
    {
        if (_existing is null || OperatingSystem.IsWindows())
        {
            return;
        }

        if (OperatingSystem.IsLinux() && _existing.Owner is { } owner && FileStatus.Of(beside)?.Owner != owner && !Linux.TryGive(beside, owner))
        {
            throw new UsageException($"{_shown} belongs to another user or group, who would lose it, and was left as it is", "Choose another name, or have its owner run this.");
        }

        File.SetUnixFileMode(successor.SafeFileHandle, File.GetUnixFileMode(_path));
    }

    /// <summary>A run that was killed could not clean up; its file is known by its name, and by nobody having it open.</summary>
    private static void RemoveLeftovers(string folder)
    {
        foreach (string file in Directory.EnumerateFiles(folder, ".momentum-*.tmp").Where(f => Leftover().IsMatch(Path.GetFileName(f)) && FileStatus.Of(f)?.Kind == FileKind.Plain && new FileInfo(f).LinkTarget is null))
        {
            try
            {
                new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None, bufferSize: 1, FileOptions.DeleteOnClose).Dispose();
            }
            catch (Exception inUse) when (inUse is IOException or UnauthorizedAccessException)
            {
                // Another run is writing it, or it is somebody else's.
            }
        }
    }

    private static void Trying(string shown, Action action) => Trying(shown, () =>
    {
        action();
        return 0;
    });

    private static T Trying<T>(string shown, Func<T> action)
    {
        try
        {
            return action();
        }
        catch (UnauthorizedAccessException)
        {
            throw new UsageException($"{shown} cannot be written: no permission", "Choose a place where you may write.");
        }
        catch (DirectoryNotFoundException)
        {
            throw new UsageException($"{shown} cannot be written: its directory does not exist", "Make the directory first, or choose another place.");
        }
        catch (Exception failure) when (failure is IOException or NotSupportedException)
        {
            throw new UsageException($"{shown} cannot be written: {failure.Message.TrimEnd('.')}", "Check the path and the disk.");
        }
    }

    [GeneratedRegex(@"^\.momentum-[0-9a-f]{32}\.tmp$")]
    private static partial Regex Leftover();
}
