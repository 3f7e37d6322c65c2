using Momentum.Cases.Syntax;

namespace Momentum.Cases.Keys;

/// <summary>Collects what is wrong, or worth a warning, in one case file.</summary>
internal sealed class Findings(string file)
{
    // A file of random bytes must not produce a message a byte.
    private const int Most = 50;

    private readonly List<Problem> _problems = [];

    public string File => file;

    /// <summary>In the order of the file.</summary>
    public IReadOnlyList<Problem> Problems => [.. _problems.OrderBy(p => p.Place?.Line ?? 0).ThenBy(p => p.Place?.Column ?? 0)];

    public bool HasErrors => _problems.Exists(p => p.Severity == Severity.Error);

    public int ErrorCount => _problems.Count(p => p.Severity == Severity.Error);

    public void Add(Problem problem)
    {
        if (_problems.Count < Most)
        {
            _problems.Add(problem);
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

    private Problem About(Severity severity, Section section, string? property, string message, string allowed, string remedy)
    {
        string? key = property is null ? null : KeyDescription.SpellingOf(property);
        string path = key is null ? section.Path : KeyDescription.Join(section.Path, key);
        bool isGiven = section.Given.TryGetValue(key ?? "", out TomlEntry entry);
        Place place = isGiven ? entry.Value.Place : section.Place;
        return new Problem(severity, file, place, path, isGiven ? entry.Value.Quoted : null, message, allowed, remedy);
    }
}
