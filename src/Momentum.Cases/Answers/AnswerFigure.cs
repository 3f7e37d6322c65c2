namespace Momentum.Cases.Answers;

/// <summary>One number of the answer: under its key for machines, in SI, and in a unit that a reader likes.</summary>
/// <param name="Key">Name with the SI unit, such as <c>cord_length_m</c>.</param>
/// <param name="Name">What it is, in the trade's words.</param>
/// <param name="Value">The number in SI.</param>
/// <param name="Shown">The number as a reader sees it.</param>
/// <param name="Unit">Unit of <paramref name="Shown"/>; empty for a ratio.</param>
/// <param name="Note">How it is meant or where it occurs; may be empty.</param>
/// <param name="Solved">Whether it is the unknown that the case asked for.</param>
public sealed record AnswerFigure(string Key, string Name, double Value, double Shown, string Unit, string Note = "", bool Solved = false)
    : AnswerNode(Key, Name, Note)
{
    /// <summary>What the stated tolerances make of it; null if that is not known.</summary>
    public FigureSpread? Spread { get; init; }

    /// <summary>Whether it belongs to the short answer, which is read and signed first.</summary>
    public bool IsHeadline { get; init; }

    /// <summary>A number that is shown in SI.</summary>
    public static AnswerFigure Si(string key, string name, double value, string unit, string note = "", bool solved = false) =>
        new(key, name, value, value, unit, note, solved);

    /// <summary>The same, as part of the short answer.</summary>
    internal AnswerFigure Headline() => this with { IsHeadline = true };
}
