using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Two values that meet where one unit is needed: the fact that rules judge.</summary>
/// <param name="role">Why they must agree.</param>
/// <param name="actual">The value; in a sum or comparison the right operand.</param>
/// <param name="expected">What the place expects; in a sum or comparison the left operand.</param>
/// <param name="site">The expression to report at.</param>
/// <param name="target">What is assigned, called or returned from; null where there is none.</param>
internal sealed class Meeting(Role role, Measured actual, Measured expected, SyntaxNode site, ISymbol? target)
{
    internal Role Role { get; } = role;

    internal Measured Actual { get; } = actual;

    internal Measured Expected { get; } = expected;

    internal SyntaxNode Site { get; } = site;

    internal ISymbol? Target { get; } = target;

    internal Agreement Agreement { get; } = Agreements.Of(actual, expected, role == Role.Sum);

    /// <summary>The left operand of a sum or comparison.</summary>
    internal SyntaxNode? Other { get; set; }

    /// <summary>Where inside a callee the two meet, when it is the call that brings them together.</summary>
    internal Location? Inside { get; set; }

    internal Evidence Weaker => Measured.Weaker(Actual, Expected);

    internal bool IsSymbolic => !Actual.Parameters.IsEmpty || !Expected.Parameters.IsEmpty;

    internal bool IsWorthKeeping => Agreement != Agreement.Agree || !Actual.Context.Agrees(Expected.Context);

    /// <summary>Whether two values can have anything to disagree about.</summary>
    internal static bool IsNeeded(Measured actual, Measured expected) =>
        (actual.Unit is not null && expected.Unit is not null) || (!actual.Context.IsNone && !expected.Context.IsNone);
}
