namespace Momentum.Cases;

/// <summary>What came of reading a case file.</summary>
/// <param name="File">The file as named by the user.</param>
/// <param name="Case">The case; null if there is any error.</param>
/// <param name="Problems">Errors and warnings in file order.</param>
/// <param name="NotUsedYet">Paths of keys that were read and validated but that no computation uses yet.</param>
/// <param name="Text">The text of the file, for the report's inputs; empty if it could not be read.</param>
internal sealed record CaseReading(string File, Case? Case, IReadOnlyList<Problem> Problems, IReadOnlyList<string> NotUsedYet, string Text)
{
    /// <summary>SHA-256 of the file's bytes in hexadecimal digits, by which a report names its case; empty if it could not be read.</summary>
    public string Sha256 { get; init; } = "";
}
