using System.Collections.Concurrent;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// Reads the unit that a programmer wrote into a name: <c>rateRpm</c>, <c>length_mm</c>, <c>thrustLbf</c>,
/// <c>omegaRadPerSec</c>, <c>angleInDegrees</c>, <c>MmPerInch</c>. What could as well be a word is not read.
/// </summary>
internal static class NameUnits
{
    // Units that take powers or prefixes in words, as in areaSquareMm.
    private static readonly Dictionary<string, int> _powers = new(StringComparer.Ordinal) { ["square"] = 2, ["sq"] = 2, ["cubic"] = 3, ["cu"] = 3 };

    // What a stem may say against a unit that reads well alone.
    private static readonly HashSet<string> _notAnAngle = new(StringComparer.Ordinal)
    {
        "wheel", "pipe", "hub", "inner", "outer", "corner", "curvature", "earth", "orbit", "dose", "freedom", "polynomial", "poly", "temperature", "temp", "temps", "vertex", "node",
    };

    // Minutes and seconds of arc, and hours of right ascension: fifteen degrees each, and no time.
    private static readonly HashSet<string> _angleStems = new(StringComparer.Ordinal)
    {
        "arc", "angle", "latitude", "longitude", "lat", "lon", "lng", "long", "declination", "dec", "ascension", "ra", "ha", "gha", "lha", "sha", "lst", "gst", "gmst", "gast", "sidereal", "hourangle", "dms", "dm",
    };

    // Unit words that are other words more often than not when they stand in the singular at the end of a name.
    private static readonly HashSet<string> _otherWords = new(StringComparer.Ordinal)
    {
        "second", "minute", "hour", "day", "week", "degree", "radian", "revolution", "meter", "metre", "gram", "foot", "inch", "yard", "mile", "mil", "mils", "pound", "stone", "slug", "knot",
        "bar", "grain", "grains", "fathom", "beat", "beats", "cycle", "cycles", "kip", "count", "pond", "ponds", "newton", "pascal", "joule", "watt", "liter", "litre", "tonne", "atmosphere", "torr",
        "calorie", "erg", "dyne", "percent", "gravity", "celsius", "fahrenheit", "kelvin", "sec", "degreecelsius", "degreefahrenheit", "weeks", "atmospheres", "stones",
        "volt", "ampere", "amp", "ohm", "farad", "henry", "coulomb", "siemens", "tesla", "weber", "mole", "moles", "candela", "lumen", "lux", "bit", "bits", "byte", "bytes", "gallon", "kilobyte", "megabyte", "kilobytes", "megabytes", "gigabytes",
        "kilometer", "kilometre", "millimeter", "millimetre", "centimeter", "centimetre", "millisecond", "microsecond", "nanosecond", "kilogram", "milligram", "pounds", "ounces", "psi", "hertz", "rpm", "mph", "dyn", "decimalfraction", "partspermillion", "hands",
    };

    // Alone they are a part of a time of day or of an angle in degrees, minutes and seconds.
    private static readonly HashSet<string> _parts = new(StringComparer.Ordinal) { "seconds", "minutes", "hours", "days" };

    // Alone these abbreviations are still hardly anything else.
    private static readonly HashSet<string> _plainAlone = new(StringComparer.Ordinal) { "rpm", "mph", "kph", "kmh" };

    private static readonly HashSet<string> _guessedAlone = new(StringComparer.Ordinal) { "deg", "degs", "mm", "cm", "km", "ft", "kg", "secs", "msec", "usec", "dps", "arcsec", "arcmin", "khz", "lbf", "kgf", "kpa", "kw" };

    private static readonly ConcurrentDictionary<(string Name, bool IsMethod), NameReading?> _known = new();

    /// <summary>The unit that the name states, and how plainly; null where none.</summary>
    /// <param name="name">The name of a variable, member or method.</param>
    /// <param name="isMethod">Whether it names a method, whose <c>ToRadians</c> says what it returns.</param>
    internal static NameReading? Reading(string name, bool isMethod = false) => _known.GetOrAdd((name, isMethod), static key => Find(key.Name, key.IsMethod));

    /// <summary>The unit that the name states, or null.</summary>
    internal static Unit? Read(string name, bool isMethod = false) => Reading(name, isMethod)?.Unit;

    /// <summary>A name with the unit suffix of another: <c>depthM</c> after <c>lengthMm</c> is <c>depthMm</c>; null where that does not read.</summary>
    internal static string? Renamed(string name, string like)
    {
        string? suffix = SuffixOf(like);
        string? own = SuffixOf(name);
        if (suffix is null || own is null || name.Length == own.Length)
        {
            return null;
        }

        string renamed = name.Substring(0, name.Length - own.Length) + suffix;
        return Read(renamed) is { } unit && unit.Equals(Read(like)) ? renamed : null;
    }

    /// <summary>Whether a method of this name turns one unit into another, so that its body is no use of the unit it is named after.</summary>
    internal static bool Converts(string name) => UnitWords.Split(name).Exists(word => word is "to" or "2" or "from" or "convert" or "converted" or "into" or "as" or "parse");

    /// <summary>Whether a parameter or type of this name selects the unit of another: <c>isDegrees</c>, <c>useMetric</c>, <c>AngleUnit</c>.</summary>
    internal static bool Selects(string name)
    {
        List<string> words = UnitWords.Split(name);
        return words.Exists(word => word is "unit" or "units" or "metric" or "imperial" or "deg" or "degs" or "degrees" or "degree" or "rad" or "rads" or "radians" or "radian" or "feet" or "meters" or "celsius" or "fahrenheit"
            or "knots" or "miles" or "kilometers" or "si" or "seconds" or "milliseconds" or "ms");
    }

    // The shortest ending that, with the name's own stem in front, states the name's unit.
    private static string? SuffixOf(string name)
    {
        List<string> words = UnitWords.Split(name);
        for (int start = 1; start < words.Count; start++)
        {
            if (Suffix(words.GetRange(start, words.Count - start), words.GetRange(0, start), false) is not null)
            {
                string ending = string.Concat(words.Skip(start));
                return name.EndsWith(ending, StringComparison.OrdinalIgnoreCase) ? name.Substring(name.Length - ending.Length) : null;
            }
        }

        return null;
    }

    private static NameReading? Find(string name, bool isMethod)
    {
        List<string> words = UnitWords.Split(name.Replace("RPMs", "Rpm").Replace("RPM", "Rpm").Replace("MPH", "Mph").Replace("KPH", "Kph").Replace("KMH", "Kmh"));

        // A symbol that capitals would take apart: thrust_kN, pressure_MPa.
        string last = name.Substring(name.LastIndexOf('_') + 1);
        if (last.Length < name.Length && last.Length is 2 or 3 && Abbreviations.Symbol(last) is { } symbol)
        {
            return Plain(symbol, UnitWords.Split(name.Substring(0, name.Length - last.Length)));
        }

        if (Coordinate(name) is { } coordinate)
        {
            return new(coordinate, Evidence.Named);
        }

        Apart(words);
        for (int start = 0; start < words.Count; start++)
        {
            List<string> suffix = words.GetRange(start, words.Count - start);
            List<string> stem = words.GetRange(0, start);
            if (Suffix(suffix, stem, isMethod) is not { } reading)
            {
                continue;
            }

            string before = stem.Count > 0 ? stem[stem.Count - 1] : string.Empty;
            if (before is "to" or "2")
            {
                return isMethod ? new(reading.Unit, Evidence.Named) : Conversion(stem.GetRange(0, stem.Count - 1), reading.Unit) is { } ratio ? new(ratio, Evidence.Named) : null;
            }

            // Something unknown per unit, or a ratio such as DegRad: neither the unit nor its inverse.
            return before is "per" or "times" or "not" or "non" or "from" or "recip" or "reciprocal" or "inv" or "inverse" or "of" || IsRatio(before, reading.Unit) ? null : Plausible(reading, stem);
        }

        return null;
    }

    // x_m and t_s: a coordinate or a time by its usual letter, and its unit after a low line.
    private static Unit? Coordinate(string name)
    {
        string bare = name.TrimStart('_');
        int line = bare.IndexOf('_');
        return line < 0 || bare.Length != line + 2 ? null : (bare.Substring(0, line), bare[line + 1]) switch
        {
            ("x" or "y" or "z" or "dx" or "dy" or "dz" or "r" or "h" or "d", 'm') => UnitText.Read("m"),
            ("t" or "dt", 's') => UnitText.Read("s"),
            _ => null,
        };
    }

    private static bool IsRatio(string before, Unit unit) =>
        before.Length > 1 && (Abbreviations.Alone(before) ?? UnitWords.Read([before])) is { } other && other.Dimension.Equals(unit.Dimension);

    // Deg2Rad is Deg, 2, Rad; a square, as in kg_m2, stands last or before "per".
    private static void Apart(List<string> words)
    {
        for (int i = 0; i + 1 < words.Count; i++)
        {
            if (words[i].Length > 1 && words[i].EndsWith("2", StringComparison.Ordinal) && words[i + 1] is not ("per" or "to"))
            {
                words[i] = words[i].Substring(0, words[i].Length - 1);
                words.Insert(++i, "2");
            }
        }
    }

    // DegToRad is the number of radians in a degree: rad/deg.
    private static Unit? Conversion(List<string> from, Unit to)
    {
        for (int start = 0; start < from.Count; start++)
        {
            if (Suffix(from.GetRange(start, from.Count - start), ["from"], false) is { } reading)
            {
                return to.Over(reading.Unit);
            }
        }

        return null;
    }

    private static NameReading? Suffix(List<string> words, List<string> stem, bool isMethod)
    {
        int per = words.IndexOf("per");
        if (per > 0 && per < words.Count - 1)
        {
            return Above(words.GetRange(0, per)) is { } above && Below(words.GetRange(per + 1, words.Count - per - 1)) is { } below ? new(above.Over(below), Evidence.Named) : null;
        }

        if (per == 0)
        {
            return null;
        }

        return stem.Count == 0 ? Alone(words, isMethod) : Spelled(words) ?? Abbreviated(words, stem);
    }

    private static Unit? Above(List<string> words) => Abbreviations.Compound(words) ?? Abbreviations.Above(words) ?? UnitWords.Read(words);

    private static Unit? Below(List<string> words)
    {
        int per = words.IndexOf("per");
        if (per > 0 && per < words.Count - 1)
        {
            return Below(words.GetRange(0, per)) is { } first && Below(words.GetRange(per + 1, words.Count - per - 1)) is { } second ? first.Times(second) : null;
        }

        if (words.Count == 2 && words[1] == "squared" && Below([words[0]]) is { } single)
        {
            return single.Power(2 * Dimension.Whole);
        }

        return (words.Count == 1 ? words[0] switch { "s2" => UnitText.Read("s^2"), "sec2" => UnitText.Read("s^2"), "min" => UnitText.Read("min"), _ => null } : null) ?? Above(words);
    }

    // The whole name is a unit.
    private static NameReading? Alone(List<string> words, bool isMethod)
    {
        if (words.Count == 1 && Abbreviations.Alone(words[0]) is { } unit)
        {
            return isMethod ? null : _plainAlone.Contains(words[0]) ? new(unit, Evidence.Named) : _guessedAlone.Contains(words[0]) ? new(unit, Evidence.Guessed) : null;
        }

        return Abbreviations.Compound(words) is { } compound ? new(compound, Evidence.Guessed)
            : Spelled(words) is { } spelled ? new(spelled.Unit, isMethod || _parts.Contains(words[words.Count - 1]) ? Evidence.Guessed : Evidence.Named)
            : null;
    }

    // Words that spell a unit out.
    private static NameReading? Spelled(List<string> words) =>
        (words.Count == 1 && _otherWords.Contains(words[0])) || UnitWords.Read(words) is not { } unit || !IsKnownProduct(words, unit) ? null : new(unit, Evidence.Named);

    // Newton metres and foot pounds are products; degrees minutes are two parts of one angle.
    private static bool IsKnownProduct(List<string> words, Unit unit) =>
        words.Count == 1 || !unit.IsProduct || (unit.Dimension.Mass != 0 && unit.Dimension.Length != 0);

    private static NameReading? Abbreviated(List<string> words, List<string> stem)
    {
        if (_powers.TryGetValue(stem[stem.Count - 1], out int power))
        {
            return words.Count == 1 && Abbreviations.Alone(words[0]) is { } side && side.Dimension.Equals(Dimension.Of(length: 1)) ? new(side.Power(power * Dimension.Whole)!, Evidence.Named) : null;
        }

        return Abbreviations.Compound(words) is { } compound ? new(compound, Evidence.Named)
            : words.Count == 1 && _plainAlone.Contains(words[0]) ? new(Abbreviations.Alone(words[0])!, Evidence.Named)
            : words.Count == 1 && Abbreviations.After(words[0], stem) is { } unit ? Plain(unit, stem)
            : null;
    }

    // Plain after a word that says what it measures; a guess after a word that says nothing; none after another quantity.
    private static NameReading? Plain(Unit unit, List<string> stem) => Stems.Speak(stem, unit) switch
    {
        true => new(unit, Evidence.Named),
        null => new(unit, Evidence.Guessed),
        false => null,
    };

    private static NameReading? Plausible(NameReading reading, List<string> stem)
    {
        Dimension dimension = reading.Unit.Dimension;
        bool angle = dimension.Equals(Dimension.Of(angle: 1));
        bool time = dimension.Equals(Dimension.Of(time: 1));
        return (angle && stem.Any(_notAnAngle.Contains)) || (time && stem.Any(_angleStems.Contains)) ? null : reading;
    }
}
