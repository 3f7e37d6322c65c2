using Momentum.Cases;

namespace Momentum.Tool.Files;

/// <summary>A case file as the command line names it, read, and the files that it is made from.</summary>
internal sealed class CaseFile
{
    private readonly List<InputFile> _inputs = [];

    private CaseFile(CaseReading reading) => Reading = reading;

    /// <summary>What came of reading it. Whatever is wrong comes back as problems.</summary>
    public CaseReading Reading { get; private set; }

    /// <summary>The case file, and the meshes opened so far.</summary>
    public IReadOnlyList<InputFile> Inputs => _inputs;

    /// <summary>Reads the file of that path; <c>-</c> is standard input.</summary>
    /// <param name="path">The path.</param>
    /// <param name="standardInput">Standard input.</param>
    /// <param name="meshFolder">Another folder, without links, that meshes may come from; null if there is none.</param>
    public static CaseFile Read(string path, Stream standardInput, string? meshFolder = null)
    {
        var file = new CaseFile(new CaseReading(path, null, []));
        try
        {
            if (path == "-")
            {
                file.Note(OperatingSystem.IsLinux() ? "/dev/stdin" : null);
                file.Reading = CaseReader.Read(standardInput, "(standard input)", new CaseFolder("", meshFolder, file._inputs));
                return file;
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
            file.Note(path);
            file.Reading = CaseReader.Read(stream, path, new CaseFolder(Path.GetDirectoryName(path) ?? "", meshFolder, file._inputs));
            return file;
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

        CaseFile Refuse(string message, string remedy) =>
            new(new CaseReading(path, null, [new Problem(Severity.Error, path, null, "", null, message, "", remedy)]));
    }

    private void Note(string? path)
    {
        if (path is not null && FileStatus.Of(path) is { } status)
        {
            _inputs.Add(new InputFile("the case file", status.Identity));
        }
    }

    private static IEnumerable<string> Siblings(string path)
    {
        string directory = Path.GetDirectoryName(path) is { Length: > 0 } parent ? parent : ".";
        return Directory.Exists(directory) ? Directory.EnumerateFiles(directory, "*.toml").Take(200).Select(f => Path.GetFileName(f)!) : [];
    }
}
