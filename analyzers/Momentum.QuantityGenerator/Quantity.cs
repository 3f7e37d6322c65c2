namespace Momentum.QuantityGenerator;

/// <summary>A row of quantities.</summary>
internal sealed class Quantity(string name, string symbol, string siUnit, HashSet<string> words, string summary, string siWords, IReadOnlyList<OtherUnit> units)
{
    internal string Name => name;

    internal string Symbol => symbol;

    /// <summary>The property that gives the SI number, such as <c>MetersPerSecond</c>.</summary>
    internal string SiUnit => siUnit;

    internal bool IsOfVectors => words.Contains("vector");

    /// <summary>Whether it is made here; the others are UnitsNet's.</summary>
    internal bool IsOwn => words.Contains("own");

    /// <summary>Whether its SI number is read by a method written by hand.</summary>
    internal bool IsReadByHand => words.Contains("exact");

    internal string Summary => summary;

    internal string SiWords => siWords;

    internal IReadOnlyList<OtherUnit> Units => units;
}

/// <summary>A further unit of a quantity of our own.</summary>
internal sealed class OtherUnit(string name, string factor, string words)
{
    internal string Name => name;

    /// <summary>Whether there is a factor at all.</summary>
    internal bool IsSi => factor == "1";

    internal string ToSi(string number) => IsSi ? number : factor[0] == '/' ? $"{number} / {factor.Substring(1)}" : $"{number} * ({factor})";

    internal string FromSi(string number) => IsSi ? number : factor[0] == '/' ? $"{number} * {factor.Substring(1)}" : $"{number} / ({factor})";

    internal string Words => words;
}
