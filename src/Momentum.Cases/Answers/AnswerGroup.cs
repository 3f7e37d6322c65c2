namespace Momentum.Cases.Answers;

/// <summary>Parts of the answer that belong together.</summary>
/// <param name="Key">Its name for machines; empty if it is for readers only.</param>
/// <param name="Name">Its heading.</param>
/// <param name="Nodes">Its parts, most important first.</param>
/// <param name="Note">A sentence about all of them; may be empty.</param>
public sealed record AnswerGroup(string Key, string Name, IReadOnlyList<AnswerNode> Nodes, string Note = "") : AnswerNode(Key, Name, Note)
{
    /// <summary>Every figure of the group and of the groups in it, in order; those of tables are left out.</summary>
    public IEnumerable<AnswerFigure> Figures => Nodes.SelectMany(node => node switch
    {
        AnswerFigure figure => [figure],
        AnswerGroup group => group.Figures,
        _ => Enumerable.Empty<AnswerFigure>(),
    });

    /// <summary>The group in it that has this key; null if there is none.</summary>
    public AnswerGroup? this[string key] => Nodes.OfType<AnswerGroup>().FirstOrDefault(group => group.Key == key);
}
