namespace Momentum.Dispersion;

/// <summary>A row of <see cref="UncertainInputs"/> with the scatter that one dispersion states for it.</summary>
internal sealed class DrawnInput
{
    private readonly InputLaw[] _laws;

    private DrawnInput(InputRow row, InputLaw[] laws)
    {
        Row = row;
        _laws = laws;
    }

    internal InputRow Row { get; }

    /// <summary>How its first number scatters.</summary>
    internal InputLaw Law => _laws[0];

    /// <summary>How many numbers it draws.</summary>
    internal int Numbers => _laws.Length;

    /// <summary>The rows that scatter.</summary>
    /// <param name="uncertainty">What is stated.</param>
    /// <param name="cords">How many cords there are.</param>
    internal static DrawnInput[] Of(DespinUncertainty uncertainty, int cords) =>
        [.. UncertainInputs.All
            .Select(row => new DrawnInput(row, row.Laws(uncertainty, cords)))
            .Where(drawn => Array.Exists(drawn._laws, law => law.Scatters))];

    /// <summary>Draws its numbers for a case: the offsets from nominal.</summary>
    internal ReadOnlySpan<double> Draw(ulong seed, long number, Span<double> room)
    {
        for (int i = 0; i < _laws.Length; i++)
        {
            room[i] = _laws[i].Scatters ? _laws[i].At(CounterRandom.Uniform(seed, number, Row.Stream, i)) : 0;
        }

        return room[.._laws.Length];
    }
}
