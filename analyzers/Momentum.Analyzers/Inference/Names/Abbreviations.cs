using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>How programmers shorten units at the end of a name.</summary>
internal static class Abbreviations
{
    // Shortenings that may end any name.
    private static readonly Dictionary<string, string> _clear = Table(
        "rpm rpm|rps rps|khz kHz|mhz MHz|ghz GHz|deg deg|degs deg|mrad mrad|arcsec arcsec|arcmin arcmin|revs rev|mm mm|cm cm|km km|um um|ft ft|nmi nmi|kg kg|kgs kg|lbm lb|slugs slug|lbf lbf|kgf kgf|ozf ozf|kips kip"
        + "|sec s|secs s|msec ms|usec us|mps m/s|kph km/h|kmh km/h|mph mph|fps ft/s|mps2 m/s^2|dps deg/s|kpa kPa|hpa hPa|mbar mbar|kw kW|kj kJ|kwh kWh|mwh MWh|kgm2 kg*m^2|slugft2 slug*ft^2|lbin2 lb*in^2|lbft2 lb*ft^2"
        + "|nms N*m*s|nmm N*mm|lbfin lbf*in|inlbf lbf*in|lbfft lbf*ft|ftlbf lbf*ft|mm2 mm^2|cm2 cm^2|ft2 ft^2|mm3 mm^3|cm3 cm^3|kelvin K");

    // Shortenings that need a word for what they measure in front: lengthM, time_s, massG, forceN, speedKts.
    private static readonly (string Word, string Quantities, string Unit)[] _afterStem =
    [
        ("m", "L", "m"), ("in", "L", "in"), ("inch", "L", "in"), ("inches", "L", "in"), ("mi", "L", "mi"), ("nm", "Q", "N*m"), ("s", "T", "s"), ("us", "T", "us"), ("ms", "T", "ms"), ("ns", "T", "ns"), ("h", "T", "h"), ("hr", "T", "h"), ("hrs", "T", "h"),
        ("rad", "AR", "rad"), ("rads", "A", "rad"), ("hz", "R", "Hz"), ("ms", "V", "m/s"), ("kts", "V", "kn"), ("kt", "V", "kn"), ("kn", "F", "kN"), ("kmph", "V", "km/h"), ("ms2", "G", "m/s^2"), ("mss", "G", "m/s^2"), ("ns", "J", "N*s"),
        ("g", "M", "g"), ("n", "F", "N"), ("j", "E", "J"), ("w", "W", "W"), ("wh", "E", "Wh"), ("pa", "P", "Pa"), ("mpa", "P", "MPa"), ("bar", "P", "bar"), ("bars", "P", "bar"), ("psi", "P", "psi"), ("pascals", "P", "Pa"),
        ("k", "K", "K"), ("c", "K", "degC"), ("f", "K", "degF"), ("celsius", "K", "degC"), ("fahrenheit", "K", "degF"),
        ("lb", "M", "lb"), ("lbs", "M", "lb"), ("pounds", "M", "lb"), ("lb", "F", "lbf"), ("lbs", "F", "lbf"), ("pounds", "F", "lbf"), ("oz", "M", "oz"), ("ounces", "M", "oz"), ("oz", "F", "ozf"), ("ounces", "F", "ozf"),
        ("m2", "S", "m^2"), ("in2", "S", "in^2"), ("m3", "U", "m^3"), ("in3", "U", "in^3"), ("l", "U", "L"), ("ml", "U", "mL"),
    ];

    // Several words, joined by a bar.
    private static readonly Dictionary<string, string> _compound = Table(
        "rad,s rad/s|rad,sec rad/s|rads,sec rad/s|deg,s deg/s|deg,sec deg/s|degs,sec deg/s|rad,s2 rad/s^2|deg,s2 deg/s^2|m,s m/s|m,s2 m/s^2|mm,s mm/s|km,s km/s|km,h km/h|ft,s ft/s|ft,s2 ft/s^2|in,s in/s|kg,m2 kg*m^2|kg,m3 kg/m^3|kg,m kg/m"
        + "|g,m g/m|slug,ft2 slug*ft^2|lb,in2 lb*in^2|lb,ft2 lb*ft^2|n,m N*m|n,mm N*mm|n,s N*s|n,m,s N*m*s|lbf,in lbf*in|in,lbf lbf*in|lbf,ft lbf*ft|ft,lbf lbf*ft|kg,s kg/s|ft,lb lbf*ft|in,lb lbf*in|k,pa kPa|k,w kW|k,hz kHz|k,j kJ|h,pa hPa|k,wh kWh");

    private static readonly HashSet<string> _symbols = new(StringComparer.Ordinal) { "kN", "mN", "MN", "kPa", "MPa", "GPa", "hPa", "kJ", "MJ", "mJ", "kW", "mW", "MW", "kHz", "MHz", "GHz", "mV", "kV", "mA" };

    /// <summary>A symbol after a low line whose capitals count.</summary>
    internal static Unit? Symbol(string symbol) => _symbols.Contains(symbol) ? UnitText.Read(symbol) : null;

    /// <summary>A shortening that may end any name.</summary>
    internal static Unit? Alone(string word) => _clear.TryGetValue(word, out string? text) ? UnitText.Read(text) : word is "rad" or "rads" ? UnitText.Read("rad") : null;

    /// <summary>How the unit of a shortening is written as text; null where it is none.</summary>
    internal static string? Text(string word) => _clear.TryGetValue(word, out string? text) ? text : null;

    /// <summary>A shortening after words of which one says what it measures, where it needs that.</summary>
    internal static Unit? After(string word, List<string> stem)
    {
        if (_clear.TryGetValue(word, out string? text))
        {
            return UnitText.Read(text);
        }

        // A letter of its own in front, as in matrix_a_m, says nothing.
        if (stem[stem.Count - 1].Length == 1 && word.Length == 1)
        {
            return null;
        }

        foreach ((string shortened, string quantities, string unit) in _afterStem)
        {
            if (shortened == word && Stems.SpeakOf(stem, quantities))
            {
                return UnitText.Read(unit);
            }
        }

        // Milliseconds and hertz are common enough to be guessed at.
        return word switch { "ms" when !Stems.SpeakOf(stem, "VJGF") => UnitText.Read("ms"), "hz" when stem.Count > 0 && stem[stem.Count - 1].Length > 1 => UnitText.Read("Hz"), "rad" or "rads" when !Stems.SpeakOf(stem, "L") => UnitText.Read("rad"), _ => null };
    }

    /// <summary>What stands above "per": any shortening, and a single letter too.</summary>
    internal static Unit? Above(List<string> words)
    {
        if (words.Count != 1)
        {
            return null;
        }

        if (Alone(words[0]) is { } unit)
        {
            return unit;
        }

        foreach ((string shortened, string quantities, string text) in _afterStem)
        {
            if (shortened == words[0] && text.IndexOf('*') < 0 && text is not ("degC" or "degF") && quantities is not ("J" or "V"))
            {
                return UnitText.Read(text);
            }
        }

        return null;
    }

    /// <summary>A unit of several words, such as <c>rad_s</c>.</summary>
    internal static Unit? Compound(List<string> words) =>
        words.Count is 2 or 3 && _compound.TryGetValue(string.Join(",", words), out string? text) ? UnitText.Read(text) : null;

    private static Dictionary<string, string> Table(string rows) => rows.Split('|').Select(row => row.Split(' ')).ToDictionary(parts => parts[0], parts => parts[1], StringComparer.Ordinal);
}
