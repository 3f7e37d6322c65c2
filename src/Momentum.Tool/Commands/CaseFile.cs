using Momentum.Cases;
using Momentum.Cases.Syntax;

namespace Momentum.Tool.Commands;

/// <summary>A case file as the command line names it, and the files beside it that it may name itself.</summary>
internal static class CaseFile
{
    /// <summary>Reads the file of that path; <c>-</c> is standard input. Whatever is wrong comes back as problems.</summary>
    public static CaseReading Read(string path, Stream standardInput)
    {
        try
        {
            if (path == "-")
            {
                return CaseReader.Read(standardInput, "(standard input)", new FilesIn(""));
            }

            if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
            {
                return Refuse("it is not a path", "Name a case file, for example case.toml.");
            }

            if (Directory.Exists(path))
            {
                return Refuse("it is a directory, not a case file", "Name the file in it, for example " + Path.Combine(path, "case.toml") + ".");
            }

            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            return CaseReader.Read(stream, path, new FilesIn(Path.GetDirectoryName(path) ?? ""));
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            string? near = Nearest.To(Path.GetFileName(path), Siblings(path));
            return Refuse("there is no such file", near is null ? "Check the path; `momentum new case.toml` writes a case to start from." : $"Did you mean {Path.Combine(Path.GetDirectoryName(path) ?? "", near)}?");
        }
        catch (UnauthorizedAccessException)
        {
            return Refuse("there is no permission to read it", "Give yourself read permission, or copy the file.");
        }
        catch (Exception failure) when (failure is IOException or NotSupportedException or ArgumentException)
        {
            return Refuse($"it cannot be read: {failure.Message.TrimEnd('.')}", "Check the path and the disk.");
        }

        CaseReading Refuse(string message, string remedy) =>
            new(path, null, [new Problem(Severity.Error, TomlText.Printable(path), null, "", null, message, "", remedy)]);
    }

    private static IEnumerable<string> Siblings(string path)
    {
        string directory = Path.GetDirectoryName(path) is { Length: > 0 } parent ? parent : ".";
        return Directory.Exists(directory) ? Directory.EnumerateFiles(directory, "*.toml").Take(200).Select(f => Path.GetFileName(f)!) : [];
    }

    /// <summary>Beside the case file, so that a case and its meshes can be moved together.</summary>
    private sealed class FilesIn(string directory) : ICaseFiles
    {
        public Stream Open(string name)
        {
            string path = Path.GetFullPath(Path.Combine(directory, name));
            try
            {
                return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            }
            catch (DirectoryNotFoundException failure)
            {
                throw new FileNotFoundException(failure.Message, path, failure);
            }
        }
    }
}
