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

    /// <summary>The meetings of each arm of a conditional expression, at the arm itself where its unit was read there.</summary>
    internal IEnumerable<Meeting> Arms() => Actual.Alternatives.IsEmpty
        ? Expected.Alternatives.Select(arm => new Meeting(Role, Actual, arm, Site, Target) { Other = Other, Inside = Inside })
        : Actual.Alternatives.Select(arm => new Meeting(Role, arm, Expected, Place(arm), Target) { Other = Other, Inside = Inside });

    private SyntaxNode Place(Inferred arm) =>
        arm.Origins.Length == 1 && arm.Origins[0] is { Kind: OriginKind.Escape } origin && origin.Location.SourceTree == Site.SyntaxTree && Site.Span.Contains(origin.Location.SourceSpan)
            ? Site.FindNode(origin.Location.SourceSpan, getInnermostNodeForTie: true)
            : Site;

    internal Evidence Weaker => Inferred.Weaker(Actual, Expected);

    internal bool IsNeeded => (Actual.HasUnit && Expected.HasUnit) || (!Actual.Context.IsNone && !Expected.Context.IsNone);

    internal bool IsSymbolic => !Actual.Parameters.IsEmpty || !Expected.Parameters.IsEmpty;

    internal bool IsWorthKeeping => Agreement != Agreement.Agree || !Actual.Context.Agrees(Expected.Context);
}
