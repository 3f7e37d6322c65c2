namespace Momentum.Cases.Answers;

/// <summary>
/// A part of an answer's tree: a figure, a count, a word, a group of parts, or a table of groups alike. Every output format
/// is a writer over this one tree.
/// </summary>
/// <param name="Key">Its name for machines, within the group it is in; a figure's ends in its SI unit. A group without a key is one for readers only: its parts belong to the group around it.</param>
/// <param name="Name">What it is, in the trade's words.</param>
/// <param name="Note">How it is meant or where it occurs; may be empty.</param>
public abstract record AnswerNode(string Key, string Name, string Note);
