using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Momentum.Cases.Keys;
using Momentum.Cases.Syntax;

namespace Momentum.Cases;

/// <summary>Reads a case: bytes, UTF-8, TOML, format number, keys. Whatever is wrong comes back as problems, never as an exception.</summary>
public static class CaseReader
{
    /// <summary>A case is written by hand; anything beyond this many bytes is some other file.</summary>
    public const int LargestFile = 1 << 20;

    // The parser's own messages quote what they stumble over.
    private const int LongestMessage = 200;

    private static readonly UTF8Encoding _strictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a case from its text.</summary>
    /// <param name="text">TOML.</param>
    /// <param name="file">What to call the case in problems and results.</param>
    /// <param name="files">Opens the files that the case names; without it, naming one is an error.</param>
    public static CaseReading Read(string text, string file = "case", ICaseFiles? files = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var bytes = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return Read(bytes, file, files);
    }

    /// <summary>Reads a case from a stream.</summary>
    /// <param name="utf8">TOML as UTF-8, with or without a byte order mark, 1 MiB at most; it is read from where it stands and left open.</param>
    /// <param name="file">What to call the case in problems and results.</param>
    /// <param name="files">Opens the files that the case names; without it, naming one is an error.</param>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static CaseReading Read(Stream utf8, string file = "case", ICaseFiles? files = null)
    {
        ArgumentNullException.ThrowIfNull(utf8);
        ArgumentNullException.ThrowIfNull(file);
        var findings = new Findings(file);
        byte[]? bytes = Limited(utf8, findings);
        return bytes is null || Text(bytes, findings) is not { } text
            ? new CaseReading(file, null, findings.Problems)
            : Parse(text, findings, files) with { Sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes)), Files = files };
    }

    private static CaseReading Parse(string text, Findings findings, ICaseFiles? files)
    {
        List<string> notUsedYet = [];
        Case? read = null;
        if (TomlReader.Read(text, out (Place? Place, string Message)? broken) is not { } root)
        {
            (Place? place, string message) = broken!.Value;
            findings.Add(new Problem(
                Severity.Error, findings.File, place, "", null, $"this is not well-formed TOML: {TomlText.Glimpse(message, LongestMessage).TrimEnd('.')}", "",
                "Mend this line; a line reads key = \"value\", a section begins with [name], a comment with #."));
        }
        else if (IsCurrentFormat(root, findings))
        {
            read = (Case)new SectionReader(findings, notUsedYet, files).Read(typeof(Case), root, "");
        }

        return new CaseReading(findings.File, findings.HasErrors ? null : read, findings.Problems) { NotUsedYet = notUsedYet, Text = text };
    }

    private static bool IsCurrentFormat(TomlTable root, Findings findings)
    {
        string allowed = Case.CurrentFormat.ToString(CultureInfo.InvariantCulture);
        if (!root.Entries.TryGetValue("format", out TomlEntry entry))
        {
            findings.Add(new Problem(
                Severity.Error, findings.File, root.Place, "format", null, "it is missing, so that this may not be a case file at all", allowed,
                "Write format = 1 as the first line; `momentum new` writes a complete case to start from."));
            return false;
        }

        if (entry.Value is TomlScalar { Kind: TomlScalarKind.Whole, Text: var digits } && int.TryParse(digits, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int format))
        {
            if (format == Case.CurrentFormat)
            {
                return true;
            }

            findings.Add(new Problem(
                Severity.Error, findings.File, entry.Value.Place, "format", digits,
                format > Case.CurrentFormat ? "the file was written for a newer program" : "there was never such a format", allowed,
                format > Case.CurrentFormat ? "Update momentum (dotnet tool update --global Momentum.Tool), or write the case in format 1." : "Write format = 1."));
            return false;
        }

        findings.Add(new Problem(Severity.Error, findings.File, entry.Value.Place, "format", entry.Value.Quoted, "it is not a whole number", allowed, "Write format = 1."));
        return false;
    }

    /// <summary>At most one byte more than allowed is read, so that an endless device or a huge file costs nothing.</summary>
    private static byte[]? Limited(Stream stream, Findings findings)
    {
        byte[] buffer = new byte[LargestFile + 1];
        int length = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        if (length <= LargestFile)
        {
            return buffer[..length];
        }

        findings.Add(new Problem(
            Severity.Error, findings.File, null, "", null, "it is larger than 1 MiB, and a case file is a page or two", "at most 1 MiB",
            "Check that this is the case file and not a mesh or a result."));
        return null;
    }

    private static string? Text(byte[] bytes, Findings findings)
    {
        ReadOnlySpan<byte> span = bytes;
        if (span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            span = span[3..];
        }

        try
        {
            return _strictUtf8.GetString(span);
        }
        catch (DecoderFallbackException failure)
        {
            int at = Math.Clamp(failure.Index, 0, span.Length);
            int lineStart = span[..at].LastIndexOf((byte)'\n') + 1;
            findings.Add(new Problem(
                Severity.Error, findings.File, new Place(span[..at].Count((byte)'\n') + 1, at - lineStart + 1), "", null, "the file is not UTF-8 text", "UTF-8",
                "Save it as UTF-8 in your editor (it may be UTF-16, Latin-1, or not a text at all)."));
            return null;
        }
    }
}
