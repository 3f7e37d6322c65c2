using Momentum.Cases;

namespace Momentum.Fuzz.Readers;

/// <summary>The bytes of a case file. Each is a case, or comes back with errors that say so in one clean line each.</summary>
internal sealed class CaseText : Reader
{
    internal override string Name => "case-text";

    internal override IEnumerable<string> Words => CaseWords.All;

    internal override void WarmUp() => QuantityTexts.MakeTables();

    internal override void Read(byte[] input) => Reading(input);

    /// <summary>What comes of the bytes; the laws of every reading hold.</summary>
    internal static CaseReading Reading(byte[] input)
    {
        using MemoryStream stream = new(input, writable: false);
        CaseReading reading = CaseReader.Read(stream);
        Holds(reading.HasErrors == (reading.Case is null), "There is a case with an error, or none without one.");
        foreach (Problem problem in reading.Problems)
        {
            string line = problem.ToString();
            Holds(line.Length is > 0 and < 10_000, $"A problem takes {line.Length} characters.");
            Holds(!line.Contains("unforeseen", StringComparison.Ordinal), line);
        }

        return reading;
    }
}
