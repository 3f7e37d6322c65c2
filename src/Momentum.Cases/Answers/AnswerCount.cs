namespace Momentum.Cases.Answers;

/// <summary>A whole number of the answer, exact and without a unit.</summary>
/// <param name="Key">Its name for machines.</param>
/// <param name="Name">What is counted.</param>
/// <param name="Count">How many.</param>
/// <param name="Note">How it is meant; may be empty.</param>
public sealed record AnswerCount(string Key, string Name, ulong Count, string Note = "") : AnswerNode(Key, Name, Note)
{
    internal AnswerCount(string key, string name, int count, string note = "")
        : this(key, name, (ulong)count, note)
    {
    }
}
