using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Two values that meet where one unit is needed: the fact that rules judge.</summary>
internal sealed class Meeting
{
    /// <param name="role">Why they must agree.</param>
    /// <param name="actual">The value; in a sum or comparison the right operand.</param>
    /// <param name="expected">What the place expects; in a sum or comparison the left operand.</param>
    /// <param name="site">The expression to report at.</param>
    /// <param name="target">The name of what is assigned, called or returned from; empty where there is none.</param>
    internal Meeting(Role role, Inferred actual, Inferred expected, SyntaxNode site, string target)
    {
        Role = role;
        Actual = actual;
        Expected = expected;
        Site = site;
        Target = target;
        Agreement = Agreements.Of(actual, expected, role == Role.Sum);
    }

    internal Role Role { get; }

    internal Inferred Actual { get; }

    internal Inferred Expected { get; }

    internal SyntaxNode Site { get; }

    internal string Target { get; }

    internal Agreement Agreement { get; }

    /// <summary>The left operand of a sum or comparison.</summary>
    internal SyntaxNode? Other { get; set; }

    /// <summary>Where inside a callee the two meet, when it is the call that brings them together.</summary>
    internal Location? Inside { get; set; }

    internal Evidence Weaker => Inferred.Weaker(Actual, Expected);

    internal bool IsNeeded => (Actual.HasUnit && Expected.HasUnit) || (!Actual.Context.IsNone && !Expected.Context.IsNone);

    internal bool IsSymbolic => !Actual.Parameters.IsEmpty || !Expected.Parameters.IsEmpty;

    internal bool IsWorthKeeping => Agreement != Agreement.Agree || !Actual.Context.Agrees(Expected.Context);
}
