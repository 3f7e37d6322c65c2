using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// A body without branches, lambdas or anything else that a control-flow graph would take apart: its statements can be
/// evaluated one after the other as they stand, which saves building the graph.
/// </summary>
internal static class StraightLine
{
    /// <summary>The statements, or null where the body needs a control-flow graph.</summary>
    internal static ImmutableArray<IOperation>? Of(IOperation? root)
    {
        IBlockOperation? block = root switch
        {
            IMethodBodyOperation body => body.BlockBody ?? body.ExpressionBody,
            IBlockOperation { Parent: null } accessor => accessor,
            _ => null,
        };
        return block is not null && block.Operations.All(IsStraight) ? block.Operations : null;
    }

    private static bool IsStraight(IOperation operation)
    {
        switch (operation.Kind)
        {
            case OperationKind.VariableDeclarationGroup:
            case OperationKind.VariableDeclaration:
            case OperationKind.VariableDeclarator:
            case OperationKind.VariableInitializer:
            case OperationKind.ExpressionStatement:
            case OperationKind.Return:
            case OperationKind.Literal:
            case OperationKind.LocalReference:
            case OperationKind.ParameterReference:
            case OperationKind.FieldReference:
            case OperationKind.PropertyReference:
            case OperationKind.InstanceReference:
            case OperationKind.ArrayElementReference:
            case OperationKind.Conversion:
            case OperationKind.Unary:
            case OperationKind.Binary:
            case OperationKind.Parenthesized:
            case OperationKind.SimpleAssignment:
            case OperationKind.CompoundAssignment:
            case OperationKind.Invocation:
            case OperationKind.Argument:
            case OperationKind.Discard:
            case OperationKind.Tuple:
            case OperationKind.ArrayCreation:
            case OperationKind.ArrayInitializer:
            case OperationKind.DefaultValue:
                break;
            case OperationKind.ObjectCreation when ((IObjectCreationOperation)operation).Initializer is null:
                break;
            default:
                return false;
        }

        foreach (IOperation child in operation.ChildOperations)
        {
            if (!IsStraight(child))
            {
                return false;
            }
        }

        return true;
    }
}
