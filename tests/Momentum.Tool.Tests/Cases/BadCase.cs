namespace Momentum.Tool.Tests.Cases;

/// <summary>A slip in a case file, and what the program must say of it.</summary>
/// <param name="Name">The slip in words.</param>
/// <param name="Piece">The piece of the sample that is changed.</param>
/// <param name="Replacement">What stands there instead.</param>
/// <param name="At">The piece of the changed text that the error must point to: its line.</param>
/// <param name="Key">The key that the error must name.</param>
/// <param name="Says">Words of the message.</param>
/// <param name="Remedy">Words of the remedy.</param>
public sealed record BadCase(string Name, string Piece, string Replacement, string At, string Key, string Says, string Remedy)
{
    public override string ToString() => Name;
}
