using System.Runtime.InteropServices;
using System.Text;
using Momentum.Cases.Syntax;

namespace Momentum.Tool.Commands;

/// <summary>Writes a result file beside its place and renames it, so that a reader sees the old file or the new one, never half of one.</summary>
internal static class OutputFile
{
    private static readonly UTF8Encoding _utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes the text.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="text">The whole content.</param>
    /// <param name="overwrite">Whether an existing file may be replaced.</param>
    /// <exception cref="UsageException">The file exists and must not be replaced, or cannot be written.</exception>
    public static void Write(string path, string text, bool overwrite)
    {
        string shown = TomlText.Printable(path);
        try
        {
            if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
            {
                throw new UsageException($"\"{shown}\" is not a path to write to", "Name a file, for example --output result.csv.");
            }

            if (Directory.Exists(path))
            {
                throw new UsageException($"{shown} is a directory", "Name a file in it.");
            }

            if (!overwrite && File.Exists(path))
            {
                throw new UsageException($"{shown} exists already and was left as it is", "Choose another name, or add --force to replace it.");
            }

            string target = (File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null) ?? Path.GetFullPath(path);
            if (IsDevice(target))
            {
                File.WriteAllText(target, text, _utf8);
                return;
            }

            Replace(target, text, overwrite);
        }
        catch (UnauthorizedAccessException)
        {
            throw new UsageException($"{shown} cannot be written: no permission", "Choose a place where you may write.");
        }
        catch (DirectoryNotFoundException)
        {
            throw new UsageException($"{shown} cannot be written: its directory does not exist", "Make the directory first, or choose another place.");
        }
        catch (Exception failure) when (failure is IOException or NotSupportedException or ArgumentException)
        {
            throw new UsageException($"{shown} cannot be written: {failure.Message.TrimEnd('.')}", "Check the path and the disk.");
        }
    }

    private static void Replace(string target, string text, bool overwrite)
    {
        string beside = Path.Combine(Path.GetDirectoryName(target)!, $".{Path.GetFileName(target)}.{Guid.NewGuid():N}.tmp");
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, _ => File.Delete(beside));
        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, _ => File.Delete(beside));
        try
        {
            File.WriteAllText(beside, text, _utf8);
            File.Move(beside, target, overwrite);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>A device is written through, for renaming a file onto it would put a plain file in its place.</summary>
    private static bool IsDevice(string target) =>
        target.StartsWith("/dev/", StringComparison.Ordinal) || target.StartsWith("/proc/", StringComparison.Ordinal) || target.StartsWith(@"\\.\", StringComparison.Ordinal);
}
