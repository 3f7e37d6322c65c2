using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>What one statement puts into a field.</summary>
/// <param name="field">The field, or the one behind a property.</param>
/// <param name="value">The value, which may hang on the parameters of the method.</param>
/// <param name="isUpdate">Whether it is made from what the field held, as by <c>+=</c>.</param>
internal readonly struct FieldWrite(IFieldSymbol field, Inferred value, bool isUpdate)
{
    internal IFieldSymbol Field { get; } = field;

    internal Inferred Value { get; } = value;

    internal bool IsUpdate { get; } = isUpdate;
}
