namespace Momentum.Cases;

/// <summary>What came of reading a case.</summary>
public sealed record CaseReading
{
    internal CaseReading(string file, Case? given, IReadOnlyList<Problem> problems)
    {
        File = file;
        Case = given;
        Problems = problems;
    }

    /// <summary>What the caller named the case by; every problem carries it.</summary>
    public string File { get; }

    /// <summary>Errors and warnings in the order of the text.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Whether there is an error, so that there is no case to judge.</summary>
    public bool HasErrors => Case is null;

    /// <summary>What the case is about, as its title says; empty with an error.</summary>
    public string Title => Case?.Title ?? "";

    /// <summary>Paths of keys that were read and validated but that no computation uses yet.</summary>
    public IReadOnlyList<string> NotUsedYet { get; init; } = [];

    /// <summary>The text of the case; empty if it could not be read.</summary>
    public string Text { get; init; } = "";

    /// <summary>SHA-256 of the case's bytes in hexadecimal digits, by which a report names its case; empty if it could not be read.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>The case; null if there is any error.</summary>
    internal Case? Case { get; }

    /// <summary>The files that the case may name; null if there are none.</summary>
    internal ICaseFiles? Files { get; init; }
}
