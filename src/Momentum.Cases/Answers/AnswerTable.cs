namespace Momentum.Cases.Answers;

/// <summary>Rows that hold the same parts each, or some of them.</summary>
/// <param name="Key">Its name for machines.</param>
/// <param name="Name">Its heading.</param>
/// <param name="Rows">The rows; their own keys and names are empty.</param>
/// <param name="Note">A sentence about all of them; may be empty.</param>
public sealed record AnswerTable(string Key, string Name, IReadOnlyList<AnswerGroup> Rows, string Note = "") : AnswerNode(Key, Name, Note)
{
    /// <summary>The columns: of every key in any row, the first part that has it.</summary>
    public IReadOnlyList<AnswerNode> Columns => [.. Rows.SelectMany(row => row.Nodes).DistinctBy(node => node.Key)];

    internal static AnswerGroup Row(params IEnumerable<AnswerNode?> nodes) => new("", "", [.. nodes.OfType<AnswerNode>()]);
}
