using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>
/// A method of a quantity, vector or rotation called for nothing: they are immutable, so the statement does nothing. A call
/// inside a try is let be: it may be there to see whether it throws.
/// </summary>
internal sealed class ResultUnusedRule : IObservationRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.ResultUnused;

    public Diagnostic? Judge(Observation observation, Conversions conversions)
    {
        if (observation.Operation is not IInvocationOperation { Syntax: InvocationExpressionSyntax { Parent: ExpressionStatementSyntax statement } } call
            || call.Instance is null || !Types.IsQuantity(call.TargetMethod.ContainingType) || !call.TargetMethod.ContainingType.IsValueType
            || !Types.IsQuantity(call.TargetMethod.ReturnType)
            || statement.Ancestors().Any(a => a is TryStatementSyntax))
        {
            return null;
        }

        return Diagnostic.Create(
            Descriptor,
            call.Syntax.GetLocation(),
            call.Syntax.ToString(),
            call.TargetMethod.ReturnType.ToDisplayString(SymbolDisplayFormat.MinimallyQualifiedFormat));
    }
}
