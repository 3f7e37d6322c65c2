namespace Momentum.Cases;

/// <summary>One thing wrong, or worth a warning, in a case file: where, what, what is allowed, and how to mend it.</summary>
/// <param name="Severity">Error or warning.</param>
/// <param name="File">The file as named on the command line.</param>
/// <param name="Place">Line and column; null where the trouble is with the file as a whole.</param>
/// <param name="Key">Path of the key, such as <c>despin.cord.line_density</c>; empty for the file as a whole.</param>
/// <param name="Value">The value as written, or null if there is none.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Allowed">What would be allowed; may be empty.</param>
/// <param name="Remedy">What to write or do instead.</param>
public sealed record Problem(
    Severity Severity,
    string File,
    Place? Place,
    string Key,
    string? Value,
    string Message,
    string Allowed,
    string Remedy)
{
    /// <summary>One line: <c>file:line:column: error: key = value: message. Allowed: … Remedy.</c></summary>
    public override string ToString()
    {
        string where = Place is { } place ? $"{File}:{place.Line}:{place.Column}" : File;
        string kind = Severity == Severity.Error ? "error" : "warning";
        string subject = (Key, Value) switch
        {
            ("", _) => "",
            (_, null) => $"{Key}: ",
            _ => $"{Key} = {Value}: ",
        };
        string allowed = Allowed.Length == 0 ? "" : $" Allowed: {Allowed}.";
        return $"{where}: {kind}: {subject}{Message}.{allowed} {Remedy}";
    }
}
