namespace Momentum.Analyzers.Algebra;

/// <summary>
/// Reads a unit spelled in words in Pascal case, as members of quantity types are: <c>RevolutionsPerMinute</c>,
/// <c>KilogramSquareMeters</c>, <c>PoundForceInches</c>, <c>MetersPerSecondSquared</c>, <c>FeetToTheFourth</c>.
/// </summary>
internal static class UnitWords
{
    // The longest unit in words is three: nautical mile is two, mechanical horsepower two, parts per million three.
    private const int LongestUnit = 3;

    /// <summary>The unit, or null where any word is not part of one.</summary>
    internal static Unit? Read(string name) => Read(Split(name));

    internal static Unit? Read(IReadOnlyList<string> words)
    {
        Unit? result = null;
        int sign = 1;
        int next = 1;
        Unit? last = null;
        int lastPower = 0;
        for (int i = 0; i < words.Count;)
        {
            switch (words[i])
            {
                case "per" when i + 1 < words.Count:
                    sign = -1;
                    i++;
                    continue;
                case "inverse" when i == 0:
                    sign = -1;
                    i++;
                    continue;
                case "square":
                    next = 2;
                    i++;
                    continue;
                case "cubic":
                    next = 3;
                    i++;
                    continue;
                case "squared" or "cubed" when last is not null:
                    result = Multiply(result, last, lastPower * (words[i] == "squared" ? 1 : 2));
                    i++;
                    continue;
                case "to" when last is not null && i + 2 < words.Count && words[i + 1] == "the" && Ordinal(words[i + 2]) is > 0 and int power:
                    result = Multiply(result, last, lastPower * (power - 1));
                    i += 3;
                    continue;
            }

            (Unit? unit, int used) = Longest(words, i);
            if (unit is null)
            {
                return null;
            }

            lastPower = sign;
            last = unit;
            result = Multiply(result, unit, sign * next);
            next = 1;
            i += used;
        }

        return last is null ? null : result;
    }

    /// <summary>Words of an identifier in lower case: at capitals, digits and underscores.</summary>
    internal static List<string> Split(string name)
    {
        List<string> words = [];
        int start = 0;
        for (int i = 1; i <= name.Length; i++)
        {
            bool boundary = i == name.Length
                || name[i] == '_'
                || (char.IsUpper(name[i]) && (!char.IsUpper(name[i - 1]) || (i + 1 < name.Length && char.IsLower(name[i + 1]))));
            if (!boundary)
            {
                continue;
            }

            string word = name.Substring(start, i - start).Trim('_');
            if (word.Length > 0)
            {
                words.Add(word.ToLowerInvariant());
            }

            start = i;
        }

        return words;
    }

    private static (Unit? Unit, int Used) Longest(IReadOnlyList<string> words, int start)
    {
        for (int count = Math.Min(LongestUnit, words.Count - start); count > 0; count--)
        {
            string joined = string.Concat(words.Skip(start).Take(count).Select(Singular));
            if (UnitTable.ByWord(joined) is { } unit)
            {
                return (unit, count);
            }
        }

        return (null, 0);
    }

    private static string Singular(string word) =>
        word switch
        {
            "feet" => "foot",
            "inches" => "inch",
            "hertz" or "celsius" or "celcius" => word,
            "gravities" => "gravity",
            _ when word.EndsWith("feet", StringComparison.Ordinal) => word.Substring(0, word.Length - 4) + "foot",
            _ when word.EndsWith("inches", StringComparison.Ordinal) => word.Substring(0, word.Length - 2),
            _ when word.EndsWith("s", StringComparison.Ordinal) && word.Length > 3 => word.Substring(0, word.Length - 1),
            _ => word,
        };

    private static int Ordinal(string word) => word switch { "fourth" => 4, "fifth" => 5, "sixth" => 6, _ => 0 };

    private static Unit Multiply(Unit? left, Unit right, int power) =>
        (left ?? Unit.One).Times(right.Power(power * Dimension.Whole)!);
}
