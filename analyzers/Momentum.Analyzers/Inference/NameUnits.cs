using System.Collections.Concurrent;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// Reads the unit that a programmer wrote into a name: <c>rateRpm</c>, <c>length_mm</c>, <c>thrustLbf</c>,
/// <c>omegaRadPerSec</c>, <c>angleInDegrees</c>, <c>MmPerInch</c>. What could as well be a word is not read.
/// </summary>
internal static class NameUnits
{
    // Abbreviations that are hardly anything else at the end of a name.
    private static readonly Dictionary<string, string> _clear = new(StringComparer.Ordinal)
    {
        ["rpm"] = "rpm",
        ["rps"] = "rps",
        ["hz"] = "Hz",
        ["khz"] = "kHz",
        ["deg"] = "deg",
        ["degs"] = "deg",
        ["rad"] = "rad",
        ["rads"] = "rad",
        ["mrad"] = "mrad",
        ["arcsec"] = "arcsec",
        ["arcmin"] = "arcmin",
        ["revs"] = "rev",
        ["mm"] = "mm",
        ["cm"] = "cm",
        ["km"] = "km",
        ["um"] = "um",
        ["ft"] = "ft",
        ["nmi"] = "nmi",
        ["inch"] = "in",
        ["kg"] = "kg",
        ["kgs"] = "kg",
        ["lbm"] = "lb",
        ["slugs"] = "slug",
        ["lbf"] = "lbf",
        ["kgf"] = "kgf",
        ["ozf"] = "ozf",
        ["kip"] = "kip",
        ["kips"] = "kip",
        ["sec"] = "s",
        ["secs"] = "s",
        ["msec"] = "ms",
        ["usec"] = "us",
        ["ms"] = "ms",
        ["ns"] = "ns",
        ["mps"] = "m/s",
        ["kph"] = "km/h",
        ["kmh"] = "km/h",
        ["mph"] = "mph",
        ["fps"] = "ft/s",
        ["mps2"] = "m/s^2",
        ["dps"] = "deg/s",
        ["psi"] = "psi",
        ["kpa"] = "kPa",
        ["kw"] = "kW",
        ["kj"] = "kJ",
        ["kelvin"] = "K",
        ["m2"] = "m^2",
        ["m3"] = "m^3",
        ["mm2"] = "mm^2",
        ["cm2"] = "cm^2",
        ["cm3"] = "cm^3",
        ["ft2"] = "ft^2",
        ["in2"] = "in^2",
        ["kgm2"] = "kg*m^2",
        ["slugft2"] = "slug*ft^2",
        ["lbin2"] = "lb*in^2",
        ["lbft2"] = "lb*ft^2",
        ["nms"] = "N*m*s",
        ["lbfin"] = "lbf*in",
        ["inlbf"] = "lbf*in",
        ["lbfft"] = "lbf*ft",
        ["ftlbf"] = "lbf*ft",
    };

    // Several words, joined by a bar.
    private static readonly Dictionary<string, string> _compound = new(StringComparer.Ordinal)
    {
        ["rad|s"] = "rad/s",
        ["rad|sec"] = "rad/s",
        ["deg|s"] = "deg/s",
        ["deg|sec"] = "deg/s",
        ["rad|s2"] = "rad/s^2",
        ["deg|s2"] = "deg/s^2",
        ["m|s"] = "m/s",
        ["m|s2"] = "m/s^2",
        ["mm|s"] = "mm/s",
        ["km|s"] = "km/s",
        ["km|h"] = "km/h",
        ["ft|s"] = "ft/s",
        ["ft|s2"] = "ft/s^2",
        ["in|s"] = "in/s",
        ["kg|m2"] = "kg*m^2",
        ["kg|m3"] = "kg/m^3",
        ["kg|m"] = "kg/m",
        ["g|m"] = "g/m",
        ["slug|ft2"] = "slug*ft^2",
        ["lb|in2"] = "lb*in^2",
        ["lb|ft2"] = "lb*ft^2",
        ["n|m"] = "N*m",
        ["n|mm"] = "N*mm",
        ["n|s"] = "N*s",
        ["n|m|s"] = "N*m*s",
        ["lbf|in"] = "lbf*in",
        ["in|lbf"] = "lbf*in",
        ["lbf|ft"] = "lbf*ft",
        ["ft|lbf"] = "lbf*ft",
        ["kg|s"] = "kg/s",
        ["ft|lb"] = "lbf*ft",
        ["in|lb"] = "lbf*in",
    };

    // Letters that need a word of their dimension in front: lengthM, time_s, massG, forceN.
    private static readonly Dictionary<string, string> _letters = new(StringComparer.Ordinal)
    {
        ["m"] = "m",
        ["in"] = "in",
        ["s"] = "s",
        ["us"] = "us",
        ["h"] = "h",
        ["hr"] = "h",
        ["hrs"] = "h",
        ["g"] = "g",
        ["n"] = "N",
        ["kn"] = "kN",
        ["j"] = "J",
        ["w"] = "W",
        ["pa"] = "Pa",
        ["mpa"] = "MPa",
        ["bar"] = "bar",
        ["bars"] = "bar",
        ["pascals"] = "Pa",
        ["nm"] = "N*m",
        ["k"] = "K",
        ["lb"] = "?lb",
        ["lbs"] = "?lb",
        ["pounds"] = "?lb",
        ["oz"] = "?oz",
        ["ounces"] = "?oz",
    };

    private static readonly Dictionary<string, string> _stems = Stems(
        ("L", "length|height|width|depth|radius|diameter|distance|altitude|thickness|offset|position|arm|span|stroke|gap|clearance|lever|elevation|displacement|standoff"),
        ("T", "time|duration|delay|period|interval|elapsed|timeout|age|dt|epoch|latency"),
        ("M", "mass|propellant|payload|ballast"),
        ("F", "force|thrust|load|tension|drag|lift|pull|preload"),
        ("Q", "torque|moment"),
        ("E", "energy|work"),
        ("W", "power"),
        ("P", "pressure|stress"),
        ("K", "temperature|temp"));

    // What a stem may say against a unit that reads well alone.
    private static readonly HashSet<string> _notAnAngle = new(StringComparer.Ordinal)
    {
        "wheel", "pipe", "hub", "inner", "outer", "corner", "curvature", "earth", "orbit", "dose", "freedom", "polynomial", "poly", "temperature", "temp", "vertex", "node",
    };

    private static readonly HashSet<string> _angleStems = new(StringComparer.Ordinal) { "arc", "angle", "latitude", "longitude", "lat", "lon", "declination", "ascension" };

    private static readonly HashSet<string> _symbols = new(StringComparer.Ordinal) { "kN", "mN", "MN", "kPa", "MPa", "GPa", "kJ", "MJ", "mJ", "kW", "mW", "MW", "kHz", "MHz" };

    // Unit words that are other words more often than not when they stand alone at the end of a name.
    private static readonly HashSet<string> _otherWords = new(StringComparer.Ordinal)
    {
        "second", "minute", "hour", "day", "week", "degree", "radian", "revolution", "meter", "metre", "gram", "foot", "inch", "yard", "mile", "mil", "mils", "pound", "stone", "slug", "knot",
        "bar", "grain", "grains", "fathom", "beat", "beats", "cycle", "cycles", "kip", "count", "pond", "ponds", "newton", "pascal", "joule", "watt", "liter", "litre", "tonne", "atmosphere", "torr",
        "calorie", "erg", "dyne", "percent", "gravity", "celsius", "fahrenheit", "kelvin", "sec", "degreecelsius", "degreefahrenheit",
    };

    private static readonly ConcurrentDictionary<(string Name, bool IsMethod), Unit?> _known = new();

    /// <summary>The unit that the name states, or null.</summary>
    /// <param name="name">The name of a variable, member or method.</param>
    /// <param name="isMethod">Whether it names a method, whose <c>ToRadians</c> says what it returns.</param>
    internal static Unit? Read(string name, bool isMethod = false) => _known.GetOrAdd((name, isMethod), static key => Find(key.Name, key.IsMethod));

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

    // The shortest ending that, with the name's own stem in front, states the name's unit.
    private static string? SuffixOf(string name)
    {
        List<string> words = UnitWords.Split(name);
        for (int start = 1; start < words.Count; start++)
        {
            if (Suffix(words.GetRange(start, words.Count - start), words.GetRange(0, start)) is not null)
            {
                string ending = string.Concat(words.Skip(start));
                return name.EndsWith(ending, StringComparison.OrdinalIgnoreCase) ? name.Substring(name.Length - ending.Length) : null;
            }
        }

        return null;
    }

    private static Unit? Find(string name, bool isMethod)
    {
        // A symbol that capitals would take apart: thrust_kN, pressure_MPa.
        string last = name.Substring(name.LastIndexOf('_') + 1);
        if (last.Length < name.Length && last.Length is 2 or 3 && _symbols.Contains(last))
        {
            return UnitText.Read(last);
        }

        List<string> words = UnitWords.Split(name);
        Apart(words);
        for (int start = 0; start < words.Count; start++)
        {
            List<string> suffix = words.GetRange(start, words.Count - start);
            List<string> stem = words.GetRange(0, start);
            if (Suffix(suffix, stem) is not { } unit)
            {
                continue;
            }

            if (stem.Count > 0 && stem[stem.Count - 1] is "to" or "2")
            {
                return isMethod ? unit : Conversion(stem.GetRange(0, stem.Count - 1), unit);
            }

            // Something unknown per unit: neither the unit nor its inverse.
            return stem.Count > 0 && stem[stem.Count - 1] is "per" or "times" or "not" or "non" ? null : Plausible(unit, stem);
        }

        return null;
    }

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
            if (Suffix(from.GetRange(start, from.Count - start), ["from"]) is { } unit)
            {
                return to.Over(unit);
            }
        }

        return null;
    }

    private static Unit? Suffix(List<string> words, List<string> stem)
    {
        int per = words.IndexOf("per");
        if (per > 0 && per < words.Count - 1)
        {
            return Above(words.GetRange(0, per)) is { } above && Below(words.GetRange(per + 1, words.Count - per - 1)) is { } below ? above.Over(below) : null;
        }

        return per == 0 ? null : Plain(words, stem);
    }

    private static Unit? Above(List<string> words) => Abbreviation(words) ?? Letter(words) ?? UnitWords.Read(words);

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

        return Abbreviation(words)
            ?? (words.Count == 1 ? words[0] switch { "s2" => UnitText.Read("s^2"), "sec2" => UnitText.Read("s^2"), "min" => UnitText.Read("min"), _ => Letter(words) } : null)
            ?? UnitWords.Read(words);
    }

    private static Unit? Plain(List<string> words, List<string> stem)
    {
        if (Abbreviation(words) is { } unit)
        {
            // "rad" alone is a radius as often as a radian.
            return stem.Count == 0 && words.Count == 1 && words[0] is "rad" or "rads" or "inch" or "fps" ? null : unit;
        }

        if (words.Count == 1 && _letters.TryGetValue(words[0], out string? letter))
        {
            if (stem.Count > 0 && stem[stem.Count - 1].Length == 1)
            {
                return null;
            }

            string? dimension = stem.Select(s => _stems.TryGetValue(s, out string? found) ? found : null).LastOrDefault(s => s is not null);
            return (dimension, letter) switch
            {
                ("L", "m" or "in") or ("T", "s" or "us" or "h") or ("M", "g") or ("F", "N" or "kN") or ("E", "J") or ("W", "W") or ("Q", "N*m") or ("P", "Pa" or "MPa" or "bar") or ("K", "K") => UnitText.Read(letter),
                ("M", "?lb") => UnitText.Read("lb"),
                ("F", "?lb") => UnitText.Read("lbf"),
                ("M", "?oz") => UnitText.Read("oz"),
                ("F", "?oz") => UnitText.Read("ozf"),
                _ => null,
            };
        }

        return words.Count == 1 && _otherWords.Contains(words[0]) ? null : UnitWords.Read(words);
    }

    private static Unit? Abbreviation(List<string> words)
    {
        if (words.Count == 1)
        {
            return _clear.TryGetValue(words[0], out string? text) ? UnitText.Read(text) : null;
        }

        // KPa and KW fall apart at their capitals.
        if (words.Count == 2 && words[0] == "k" && _clear.TryGetValue("k" + words[1], out string? kilo))
        {
            return UnitText.Read(kilo);
        }

        return words.Count <= 3 && _compound.TryGetValue(string.Join("|", words), out string? compound) ? UnitText.Read(compound) : null;
    }

    private static Unit? Letter(List<string> words) =>
        words.Count == 1 && _letters.TryGetValue(words[0], out string? text) && text[0] != '?' && text != "N*m" ? UnitText.Read(text) : null;

    private static Unit? Plausible(Unit unit, List<string> stem)
    {
        Dimension dimension = unit.Dimension;
        bool angle = dimension.Equals(Dimension.Of(angle: 1));
        bool time = dimension.Equals(Dimension.Of(time: 1));
        return (angle && stem.Any(_notAnAngle.Contains)) || (time && stem.Any(_angleStems.Contains)) ? null : unit;
    }

    private static Dictionary<string, string> Stems(params (string Dimension, string Words)[] groups) => groups
        .SelectMany(g => g.Words.Split('|').Select(word => (word, g.Dimension)))
        .ToDictionary(p => p.word, p => p.Dimension, StringComparer.Ordinal);
}
