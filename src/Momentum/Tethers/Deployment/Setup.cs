using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>The check of one value of a deployment: a refusal names it, says what it is and what is allowed.</summary>
internal static class Setup
{
    public static void Require([DoesNotReturnIf(false)] bool holds, string name, object? given, string allowed)
    {
        if (!holds)
        {
            string text = given is IQuantity quantity ? Quoted.Text(quantity) : FormattableString.Invariant($"{given ?? "null"}");
            throw new ArgumentOutOfRangeException(name, text, $"{name} is {text}; it must be {allowed}.");
        }
    }
}
