using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>
/// Floating-point measured values compared with == or != where at least one was computed or converted. What asks whether two
/// values are one and the same is let be: a comparison with a literal or zero; inside the members that define equality; with
/// a stored or earlier value, to see whether it changed; with what <c>Min</c> or <c>Max</c> picked; before a division by the
/// difference; in tests; of points and directions.
/// </summary>
internal sealed class EqualityRule : IObservationRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.Equality;

    public Diagnostic? Judge(Observation observation, Conversions conversions) =>
        observation.Operation is IBinaryOperation { OperatorKind: BinaryOperatorKind.Equals or BinaryOperatorKind.NotEquals } comparison
        && Bare(comparison.LeftOperand) is var left && Bare(comparison.RightOperand) is var right
        && IsMeasured(left, observation.Value) && IsMeasured(right, observation.Value)
        && (IsComputed(left) || IsComputed(right))
        && !DefinesEquality(observation.Owner) && !IsTest(observation.Owner, comparison.Syntax)
        && !AsksForChange(left, right) && !AsksForChange(right, left)
        && !IsPicked(left) && !IsPicked(right)
        && !GuardsDifference(comparison.Syntax, left.Syntax, right.Syntax)
            ? Diagnostic.Create(Descriptor, comparison.Syntax.GetLocation(), comparison.Syntax.ToString(), Remedy(comparison, left))
            : null;

    private static string Remedy(IBinaryOperation comparison, IOperation left) => Types.IsQuantity(left.Type)
        ? $"compare with a tolerance: '{left.Syntax}.Equals({comparison.RightOperand.Syntax}, tolerance)'"
        : $"compare with a tolerance: 'Math.Abs({left.Syntax} - {comparison.RightOperand.Syntax}) {(comparison.OperatorKind == BinaryOperatorKind.Equals ? "<=" : ">")} tolerance'";

    private static IOperation Bare(IOperation operand)
    {
        while (operand is IConversionOperation { OperatorMethod: null } or IParenthesizedOperation)
        {
            operand = operand is IConversionOperation conversion ? conversion.Operand : ((IParenthesizedOperation)operand).Operand;
        }

        return operand;
    }

    private static bool IsMeasured(IOperation operand, Inferred better) =>
        !operand.ConstantValue.HasValue && operand is not (IDefaultValueOperation or ILiteralOperation)
        && operand is not (IPropertyReferenceOperation { Property.IsStatic: true } or IFieldReferenceOperation { Field.IsStatic: true })
        && operand.Type is { IsValueType: true } type
        && ((type.SpecialType is SpecialType.System_Double or SpecialType.System_Single && better is Measured { IsConcrete: true, Evidence: Evidence.Typed })
            || (Types.IsQuantity(type) && type.TypeKind == TypeKind.Struct && type.Name is not ("Position" or "Direction" or "PointInertia" or "MassProperties" or "BaseDimensions")));

    // A quantity converts its number to the unit of the other before it compares.
    private static bool IsComputed(IOperation operand) => Types.IsQuantity(operand.Type) || operand switch
    {
        IPropertyReferenceOperation property => Sources.Property(property.Property) is not null,
        IBinaryOperation or IInvocationOperation or IUnaryOperation => true,
        _ => false,
    };

    private static bool DefinesEquality(ISymbol owner) =>
        owner.Name.StartsWith("Equals", StringComparison.Ordinal) || owner.Name.StartsWith("Compare", StringComparison.Ordinal) || owner.Name.StartsWith("IsEqual", StringComparison.Ordinal)
        || owner.Name is "op_Equality" or "op_Inequality" or "GetHashCode" or "op_GreaterThanOrEqual" or "op_LessThanOrEqual"
        || owner is IMethodSymbol { MethodKind: MethodKind.PropertySet } || (owner as IMethodSymbol)?.ExplicitInterfaceImplementations.Any(m => m.Name is "Equals" or "CompareTo") == true;

    private static bool IsTest(ISymbol owner, SyntaxNode site) =>
        owner.GetAttributes().Concat(owner.ContainingType?.GetAttributes() ?? Enumerable.Empty<AttributeData>()).Any(a => a.AttributeClass?.Name is "FactAttribute" or "TheoryAttribute" or "TestAttribute" or "TestCaseAttribute" or "TestMethodAttribute" or "TestFixtureAttribute" or "TestClassAttribute")
        || site.Ancestors().OfType<InvocationExpressionSyntax>().Any(call => call.Expression.ToString().Contains("Assert"));

    // With what the object or somebody earlier has kept: x == _x, speed != lastSpeed.
    private static bool AsksForChange(IOperation kept, IOperation value) => kept switch
    {
        IFieldReferenceOperation { Instance: IInstanceReferenceOperation } or IPropertyReferenceOperation { Instance: IInstanceReferenceOperation } => !IsReading(value) || IsEarlier(kept),
        _ => IsEarlier(kept),
    };

    private static bool IsReading(IOperation operand) => operand is IPropertyReferenceOperation property && Sources.Property(property.Property) is not null;

    private static bool IsEarlier(IOperation operand) => operand.Syntax.DescendantNodesAndSelf().OfType<IdentifierNameSyntax>().Any(name =>
        Algebra.UnitWords.Split(name.Identifier.ValueText).FirstOrDefault() is "previous" or "prev" or "last" or "old" or "older" or "cached" or "original" or "former" or "saved" or "stored");

    private static bool IsPicked(IOperation operand) => operand switch
    {
        IInvocationOperation call => Picks(call.TargetMethod.Name),
        ILocalReferenceOperation local => local.Local.DeclaringSyntaxReferences.FirstOrDefault()?.GetSyntax() is { } declared
            && declared.FirstAncestorOrSelf<MemberDeclarationSyntax>() is { } member
            && member.DescendantNodes().Any(node => node switch
            {
                VariableDeclaratorSyntax { Initializer: { } start } variable when variable == declared => Calls(start),
                AssignmentExpressionSyntax { Left: IdentifierNameSyntax name } assignment when name.Identifier.ValueText == local.Local.Name => Calls(assignment.Right) || assignment.Right is IdentifierNameSyntax,
                _ => false,
            }),
        _ => false,
    };

    private static bool Calls(SyntaxNode node) => node.DescendantNodes().OfType<InvocationExpressionSyntax>().Any(call => call.Expression switch
    {
        MemberAccessExpressionSyntax access => Picks(access.Name.Identifier.ValueText),
        SimpleNameSyntax name => Picks(name.Identifier.ValueText),
        _ => false,
    });

    private static bool Picks(string method) =>
        method.StartsWith("Min", StringComparison.Ordinal) || method.StartsWith("Max", StringComparison.Ordinal) || method is "Clamp" or "Round" or "Floor" or "Ceiling" or "Truncate" or "First" or "Last";

    // if (high == low) { return 0; } ... / (high - low)
    private static bool GuardsDifference(SyntaxNode comparison, SyntaxNode left, SyntaxNode right) =>
        comparison.FirstAncestorOrSelf<MemberDeclarationSyntax>() is { } member
        && member.DescendantNodes().OfType<BinaryExpressionSyntax>().Any(difference => difference.IsKind(SyntaxKind.SubtractExpression)
            && ((SyntaxFactory.AreEquivalent(difference.Left, left) && SyntaxFactory.AreEquivalent(difference.Right, right))
                || (SyntaxFactory.AreEquivalent(difference.Left, right) && SyntaxFactory.AreEquivalent(difference.Right, left))));
}
