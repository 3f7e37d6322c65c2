using Momentum.Cases.Syntax;

namespace Momentum.Cases.Keys;

/// <summary>A table of the case file. Its keys are the properties with a <see cref="KeyAttribute"/>.</summary>
internal abstract record Section
{
    /// <summary>The keys that the file gave, with the place and text of each value; set by the reader.</summary>
    internal IReadOnlyDictionary<string, TomlEntry> Given { get; set; } = new Dictionary<string, TomlEntry>();

    /// <summary>Path of the section, such as <c>despin.cord</c>; empty for the whole file.</summary>
    internal string Path { get; set; } = "";

    /// <summary>Where the section begins.</summary>
    internal Place Place { get; set; } = new(1, 1);

    /// <summary>Judges what no single key can: keys that exclude or need one another. Called when every key by itself is in order.</summary>
    /// <param name="findings">Takes what is wrong.</param>
    public virtual void Judge(Findings findings)
    {
    }

}
