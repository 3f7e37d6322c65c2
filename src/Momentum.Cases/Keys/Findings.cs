using Momentum.Cases.Syntax;

namespace Momentum.Cases.Keys;

/// <summary>Collects what is wrong, or worth a warning, in one case file.</summary>
internal sealed class Findings(string file)
{
    // A file of random bytes must not produce a message a byte.
    private const int Most = 50;

    private readonly List<Problem> _errors = [];
    private readonly List<Problem> _warnings = [];
    private int _unlistedWarnings;

    public string File => file;

    /// <summary>In the order of the file, at most so many errors and so many warnings; how many more there are is told last.</summary>
    public IReadOnlyList<Problem> Problems =>
    [
        .. _errors.Concat(_warnings).OrderBy(p => p.Place?.Line ?? 0).ThenBy(p => p.Place?.Column ?? 0),
        .. More(Severity.Error, ErrorCount - _errors.Count),
        .. More(Severity.Warning, _unlistedWarnings),
    ];

    public bool HasErrors => ErrorCount > 0;

    /// <summary>How many errors were found, listed or not.</summary>
    public int ErrorCount { get; private set; }

    /// <summary>False if a further error will only be counted, so that nobody need look for its remedy.</summary>
    public bool ListsErrors => _errors.Count < Most;

    public void Add(Problem problem)
    {
        bool isError = problem.Severity == Severity.Error;
        List<Problem> list = isError ? _errors : _warnings;
        ErrorCount += isError ? 1 : 0;
        if (list.Count < Most)
        {
            list.Add(problem);
        }
        else if (!isError)
        {
            _unlistedWarnings++;
        }
    }

    /// <summary>Reports an error about a property of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="property">The property (nameof), or null for the section as a whole.</param>
    /// <param name="message">What is wrong, without a full stop.</param>
    /// <param name="allowed">What is allowed, without a full stop; may be empty.</param>
    /// <param name="remedy">What to write instead: a sentence.</param>
    public void Error(Section section, string? property, string message, string allowed, string remedy) =>
        Add(About(Severity.Error, section, property, message, allowed, remedy));

    /// <summary>Reports a warning about a property of a section.</summary>
    public void Warn(Section section, string? property, string message, string remedy) =>
        Add(About(Severity.Warning, section, property, message, "", remedy));

    private IEnumerable<Problem> More(Severity severity, int count)
    {
        if (count > 0)
        {
            string kind = severity == Severity.Error ? "error" : "warning";
            yield return new Problem(severity, file, null, "", null, $"{count} more {kind}{(count == 1 ? "" : "s")}, not listed", "", "Mend those above first.");
        }
    }

    private Problem About(Severity severity, Section section, string? property, string message, string allowed, string remedy)
    {
        string? key = property is null ? null : KeyDescription.SpellingOf(property);
        string path = key is null ? section.Path : KeyDescription.Join(section.Path, key);
        bool isGiven = section.Given.TryGetValue(key ?? "", out TomlEntry entry);
        Place place = isGiven ? entry.Value.Place : section.Place;
        return new Problem(severity, file, place, path, isGiven ? entry.Value.Quoted : null, message, allowed, remedy);
    }
}
