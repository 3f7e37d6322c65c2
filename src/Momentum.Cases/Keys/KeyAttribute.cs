using System.Runtime.CompilerServices;

namespace Momentum.Cases.Keys;

/// <summary>
/// Declares a property of a <see cref="Section"/> as a key of the case file. This is the one place where a key is described:
/// parsing, suggestions, the JSON Schema and the starter case all come from it. The key's spelling is the property's name in
/// snake case; its kind of value is the property's type.
/// </summary>
/// <param name="doc">One or two sentences: what it is, from where it is measured, what leaving it out means.</param>
/// <param name="line">Filled in by the compiler. (Reflection tells no order of properties in a native program.)</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class KeyAttribute(string doc, [CallerLineNumber] int line = 0) : Attribute
{
    public string Doc => doc;

    /// <summary>Where in its file the key is declared, which is the order in which keys are shown.</summary>
    public int Line => line;

    /// <summary>A value as written in TOML, used in messages, the schema and the starter case.</summary>
    public string Example { get; init; } = "";

    /// <summary>True if the section cannot be used without it.</summary>
    public bool Required { get; init; }

    /// <summary>True if the starter case writes it live; otherwise it stands there as a comment.</summary>
    public bool InStarter { get; init; }

    /// <summary>True if it is read and validated but no computation uses it yet; the answers then say so.</summary>
    public bool NotUsedYet { get; init; }

    /// <summary>The name that the key had before; a file that still uses it is told the new one.</summary>
    public string? Was { get; init; }

    /// <summary>Why a tolerance cannot stand there, as the end of "it has no tolerance: "; null if one can.</summary>
    public string? NoTolerance { get; init; }

    /// <summary>True if a requirement may be a band too.</summary>
    public bool AllowsBand { get; init; }

    /// <summary>True if the value is itself the size of an error about zero, with a tolerance's forms.</summary>
    public bool IsScatter { get; init; }

    /// <summary>True if each weight or cord has one of its own, so that <c>each</c> may stand behind its tolerance.</summary>
    public bool OfEachCord { get; init; }

    /// <summary>The least value that is too small, as a quantity text.</summary>
    public string? MoreThan { get; init; }

    /// <summary>The least value allowed, as a quantity text.</summary>
    public string? AtLeast { get; init; }

    /// <summary>The largest value allowed, as a quantity text.</summary>
    public string? AtMost { get; init; }
}
