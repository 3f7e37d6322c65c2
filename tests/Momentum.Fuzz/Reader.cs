namespace Momentum.Fuzz;

/// <summary>
/// Something that reads what a user wrote, fed with whatever a fuzzer thinks of. A new one is a class in Readers/, a line in
/// <see cref="All"/>, and a folder of that name in Corpus/ with at least one file to start from.
/// </summary>
internal abstract class Reader
{
    /// <summary>All readers.</summary>
    internal static IReadOnlyList<Reader> All { get; } = [new Readers.CaseText(), new Readers.QuantityTexts(), new Readers.StlMesh(), new Readers.ReadCheckSize()];

    /// <summary>The name in commands and of the folder of the corpus.</summary>
    internal abstract string Name { get; }

    /// <summary>Words of the language that is read, which a fuzzer would take long to spell.</summary>
    internal virtual IEnumerable<string> Words => [];

    /// <summary>Has everything made that is made at its first use: that is slow once, and no input's fault.</summary>
    internal virtual void WarmUp()
    {
    }

    /// <summary>Reads, and checks what must hold of any input. An exception that leaves this method is a defect.</summary>
    internal abstract void Read(byte[] input);

    /// <summary>States a law of every input.</summary>
    protected static void Holds(bool law, string what)
    {
        if (!law)
        {
            throw new BrokenLawException(what);
        }
    }
}
