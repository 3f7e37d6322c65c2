using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>One kind of mistake that two values can make when they meet.</summary>
internal interface IMeetingRule
{
    /// <summary>What is reported.</summary>
    DiagnosticDescriptor Descriptor { get; }

    /// <summary>Whether the meeting, which is known to disagree, is this mistake.</summary>
    bool Judges(Meeting meeting);
}
