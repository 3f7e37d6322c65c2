using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.FlowAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>What each variable holds at one place: locals, parameters, and the compiler's own temporaries.</summary>
internal sealed class FlowState
{
    private readonly Dictionary<object, Inferred> _values;

    internal FlowState() => _values = [];

    private FlowState(FlowState other) => _values = new(other._values);

    internal Inferred? this[object variable]
    {
        get => _values.TryGetValue(variable, out Inferred? value) ? value : null;
        set => _values[variable] = value!;
    }

    /// <summary>Forgets the arms of conditional values: what comes after a branch may hang on the same condition.</summary>
    internal void ForgetChoices()
    {
        List<object>? choices = null;
        foreach (KeyValuePair<object, Inferred> pair in _values)
        {
            if (pair.Value is Choice && pair.Key is ISymbol)
            {
                (choices ??= []).Add(pair.Key);
            }
        }

        choices?.ForEach(variable => _values[variable] = _values[variable].Kept());
    }

    internal FlowState Copy() => new(this);

    /// <summary>Takes in another path. A variable that only one path has assigned is assigned by every path that reads it.</summary>
    /// <returns>Whether anything changed.</returns>
    internal bool Join(FlowState other)
    {
        bool changed = false;
        foreach (KeyValuePair<object, Inferred> pair in other._values)
        {
            if (!_values.TryGetValue(pair.Key, out Inferred? mine))
            {
                _values.Add(pair.Key, pair.Value);
                changed = true;
                continue;
            }

            Inferred joined = pair.Key is CaptureId ? Inferred.Either(mine, pair.Value) : Inferred.Join(mine, pair.Value);
            if (!joined.SameAs(mine))
            {
                _values[pair.Key] = joined;
                changed = true;
            }
        }

        return changed;
    }
}
