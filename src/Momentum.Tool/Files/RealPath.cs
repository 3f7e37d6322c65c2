using System.Text.RegularExpressions;

namespace Momentum.Tool.Files;

/// <summary>Where a path leads when every link in it is followed as the system follows them.</summary>
internal static partial class RealPath
{
    // What Linux itself follows before it calls the links a circle.
    private const int MostLinks = 40;

    /// <summary>The full path without links, "." and "..". Nothing need exist there; what does not exist is no link.</summary>
    /// <exception cref="IOException">The links go round in a circle, or one cannot be read.</exception>
    /// <remarks>
    /// The open files of a process (<c>/proc/N/fd/1</c>) are left as they are: they look like links, but what they say they
    /// lead to may be no path.
    /// </remarks>
    public static string Of(string path)
    {
        // On Unix ".." after a link is the parent of what the link leads to, so it must not be cut out of the text.
        string full = OperatingSystem.IsWindows() ? Path.GetFullPath(path) : Path.Combine(Environment.CurrentDirectory, path);
        string done = Path.GetPathRoot(full)!;
        var rest = new Stack<string>();
        Push(full[done.Length..]);
        int links = 0;
        while (rest.TryPop(out string? name))
        {
            if (name == "..")
            {
                done = Path.GetDirectoryName(done) ?? done;
                continue;
            }

            string next = Path.Join(done, name);
            string? target = OpenFiles().IsMatch(done) ? null : new FileInfo(next).LinkTarget;
            if (target is null)
            {
                done = next;
                continue;
            }

            if (++links > MostLinks)
            {
                throw new IOException("Its links go round in a circle");
            }

            if (Path.IsPathRooted(target))
            {
                done = Path.GetPathRoot(target)!;
                target = target[done.Length..];
            }

            Push(target);
        }

        return done;

        void Push(string relative)
        {
            foreach (string name in relative.Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries).Where(n => n != ".").Reverse())
            {
                rest.Push(name);
            }
        }
    }

    /// <summary>The number of the open file of this process that a real path names, such as 1 for standard output; null if it names none.</summary>
    public static int? OwnDescriptor(string real)
    {
        string? folder = Path.GetDirectoryName(real);
        bool isOwn = folder == "/dev/fd" || (folder is not null && OpenFiles().Match(folder) is { Success: true } match && match.Groups[1].ValueSpan.SequenceEqual(Environment.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        return isOwn && int.TryParse(Path.GetFileName(real), out int number) ? number : null;
    }

    [GeneratedRegex("^/proc/([0-9]+)(?:/task/[0-9]+)?/fd$")]
    private static partial Regex OpenFiles();
}
