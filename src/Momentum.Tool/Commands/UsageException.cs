namespace Momentum.Tool.Commands;

/// <summary>The command cannot be carried out as given, for a reason outside the case file's content.</summary>
internal sealed class UsageException(string message, string remedy) : Exception(message)
{
    /// <summary>What to do instead: a sentence.</summary>
    public string Remedy => remedy;
}
