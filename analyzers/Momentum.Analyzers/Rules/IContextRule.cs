using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>One way in which the components of two values can be taken differently; found beside any difference of unit.</summary>
internal interface IContextRule
{
    /// <summary>What is reported.</summary>
    DiagnosticDescriptor Descriptor { get; }

    /// <summary>What each of the two is in or about, where that is known to differ; null where not.</summary>
    (string Actual, string Expected)? Difference(Context actual, Context expected);
}
