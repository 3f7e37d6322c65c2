namespace Momentum.Cases.Answers;

/// <summary>A word of the answer, such as the phase in which something happens.</summary>
/// <param name="Key">Its name for machines.</param>
/// <param name="Name">What it tells.</param>
/// <param name="Word">The word, as a key is spelled.</param>
/// <param name="Note">How it is meant; may be empty.</param>
public sealed record AnswerWord(string Key, string Name, string Word, string Note = "") : AnswerNode(Key, Name, Note)
{
    /// <summary>The word as a reader sees it.</summary>
    public string Shown { get; init; } = Word.Replace('_', ' ');
}
