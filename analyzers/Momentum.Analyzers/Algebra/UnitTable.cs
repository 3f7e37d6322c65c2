using System.Collections.Immutable;

namespace Momentum.Analyzers.Algebra;

/// <summary>
/// Every unit the algebra knows, by symbol and by English word; the one table that the readers of unit text, of quantity
/// members and of variable names share.
/// </summary>
/// <remarks>
/// Exact by definition: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s² (NIST SP 811, values from memory,
/// checked by the tests against the conversions of a general-purpose units library).
/// </remarks>
internal static class UnitTable
{
    private static readonly ImmutableDictionary<string, int> _symbolPrefixes = ImmutableDictionary.CreateRange(
    [
        Pair("n", -9), Pair("µ", -6), Pair("μ", -6), Pair("u", -6), Pair("m", -3), Pair("c", -2), Pair("d", -1), Pair("da", 1), Pair("h", 2), Pair("k", 3), Pair("M", 6), Pair("G", 9),
    ]);

    private static readonly ImmutableDictionary<string, int> _wordPrefixes = ImmutableDictionary.CreateRange(
    [
        Pair("pico", -12), Pair("nano", -9), Pair("micro", -6), Pair("milli", -3), Pair("centi", -2), Pair("deci", -1), Pair("deca", 1), Pair("hecto", 2), Pair("kilo", 3), Pair("mega", 6), Pair("giga", 9), Pair("tera", 12),
    ]);

    private static readonly Dictionary<string, Entry> _bySymbol = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, Entry> _byWord = new(StringComparer.Ordinal);

    static UnitTable()
    {
        Unit metre = Base("m", "meter|metre", Dimension.Of(length: 1), prefixes: true);
        Unit gram = Add("g", "gram", Dimension.Of(mass: 1), Scale.TenTo(-3), prefixes: true);
        Unit second = Base("s|sec", "second|sec", Dimension.Of(time: 1), prefixes: true);
        Unit radian = Base("rad", "radian", Dimension.Of(angle: 1), prefixes: true);
        _ = Base("cycle|cyc|count", "cycle|beat", Dimension.Of(cycle: 1));
        _ = Base("K|Δ°C|delta_degC", "kelvin|degreekelvin|degreecelsius|degreecelcius|celsius", Dimension.Of(temperature: 1), prefixes: true);
        _ = Add("°R|Δ°F|delta_degF", "degreerankine|degreefahrenheit|fahrenheit", Dimension.Of(temperature: 1), Ratio(5, 9));

        Unit minute = Multiple("min", "minute", second, Scale.Integer(60));
        Unit hour = Multiple("h|hr", "hour", second, Scale.Integer(3600));
        _ = Multiple("d|day", "day", second, Scale.Integer(86400));
        _ = Multiple("wk", "week", second, Scale.Integer(604800));

        Unit degree = Multiple("deg|°", "degree", radian, Scale.Pi.Over(Scale.Integer(180)), prefixes: true);
        _ = Multiple("arcmin", "arcminute", degree, Ratio(1, 60));
        _ = Multiple("arcsec", "arcsecond", degree, Ratio(1, 3600));
        _ = Multiple("gon", "gradian", radian, Scale.Pi.Over(Scale.Integer(200)));
        Unit revolution = Multiple("rev|turn", "revolution", radian, Scale.Pi.Times(Scale.Integer(2)));
        Register("rpm|rev/min", "rpm", revolution.Over(minute), prefixes: false);
        Register("rps", "rps", revolution.Over(second), prefixes: false);
        Register("Hz", "hertz", new Unit("Hz", Dimension.Of(time: -1, cycle: 1), Scale.One), prefixes: true);

        Unit inch = Multiple("in|inch", "inch", metre, Scale.Decimal("0.0254"), prefixes: true);
        Unit foot = Multiple("ft|foot", "foot", metre, Scale.Decimal("0.3048"), prefixes: true);
        _ = Multiple("yd", "yard", metre, Scale.Decimal("0.9144"), prefixes: true);
        Unit mile = Multiple("mi", "mile", metre, Scale.Decimal("1609.344"));
        Unit nauticalMile = Multiple("nmi", "nauticalmile", metre, Scale.Integer(1852));
        _ = Multiple("mil", "mil", inch, Scale.TenTo(-3));
        _ = Multiple("ftUS", "ussurveyfoot", metre, Ratio(1200, 3937));
        _ = Multiple("fathom", "fathom", metre, Scale.Decimal("1.8288"));
        _ = Multiple("Å", "angstrom", metre, Scale.TenTo(-10));
        _ = Multiple("au", "astronomicalunit", metre, Scale.Integer(149597870700));

        Unit kilogram = Prefixed("kg", gram, 3);
        Unit pound = Multiple("lb|lbm", "pound|poundmass", kilogram, Scale.Decimal("0.45359237"), prefixes: true);
        Unit ounce = Multiple("oz|ozm", "ounce", pound, Ratio(1, 16));
        _ = Multiple("gr", "grain", pound, Ratio(1, 7000));
        _ = Multiple("st", "stone", pound, Scale.Integer(14));
        _ = Multiple("t|tonne", "tonne", kilogram, Scale.Integer(1000), prefixes: true);
        _ = Multiple("ton_short", "shortton", pound, Scale.Integer(2000));
        _ = Multiple("ton_long", "longton", pound, Scale.Integer(2240));

        Unit perSquareSecond = metre.Over(second).Over(second);
        Unit gravity = Register("g0|gn|gee", "standardgravity", perSquareSecond.ScaledBy(Scale.Decimal("9.80665")).Named("g0"), prefixes: true);
        Unit newton = Register("N", "newton", kilogram.Times(perSquareSecond).Named("N"), prefixes: true);
        Unit poundForce = Register("lbf", "poundforce", pound.Times(gravity).Named("lbf"), prefixes: true);
        _ = Register("kip", "kip", poundForce.ScaledBy(Scale.Integer(1000)).Named("kip"), prefixes: false);
        _ = Register("ozf", "ounceforce", ounce.Times(gravity).Named("ozf"), prefixes: false);
        Unit gramForce = Register("gf", "gramforce|pond", gram.Times(gravity).Named("gf"), prefixes: true);
        _ = Register("tf", "tonneforce", kilogram.Times(gravity).ScaledBy(Scale.Integer(1000)).Named("tf"), prefixes: false);
        _ = Register("tonf", "shorttonforce", poundForce.ScaledBy(Scale.Integer(2000)).Named("tonf"), prefixes: false);
        _ = Register("pdl", "poundal", pound.Times(foot).Over(second).Over(second).Named("pdl"), prefixes: false);
        _ = Register("dyn", "dyne|dyn", newton.ScaledBy(Scale.TenTo(-5)).Named("dyn"), prefixes: false);
        _ = Register("slug", "slug", poundForce.Times(second).Times(second).Over(foot).Named("slug"), prefixes: false);

        Unit joule = Register("J", "joule", Energy(newton.Times(metre), "J"), prefixes: true);
        _ = Register("eV", "electronvolt", Energy(joule.ScaledBy(Scale.Decimal("1.602176634").Times(Scale.TenTo(-19))), "eV"), prefixes: true);
        _ = Register("erg", "erg", Energy(joule.ScaledBy(Scale.TenTo(-7)), "erg"), prefixes: false);
        Unit watt = Register("W", "watt", joule.Over(second).Named("W"), prefixes: true);
        _ = Register("Wh", "watthour", Energy(watt.Times(hour), "Wh"), prefixes: true);
        _ = Register("hp", "mechanicalhorsepower", poundForce.Times(foot).Over(second).ScaledBy(Scale.Integer(550)).Named("hp"), prefixes: false);
        _ = Register("PS", "metrichorsepower", gramForce.ScaledBy(Scale.Integer(75000)).Times(metre).Over(second).Named("PS"), prefixes: false);

        Unit pascal = Register("Pa", "pascal", newton.Over(metre.Power(2 * Dimension.Whole)!).Named("Pa"), prefixes: true);
        _ = Register("bar", "bar", pascal.ScaledBy(Scale.Integer(100000)).Named("bar"), prefixes: true);
        _ = Register("psi", "psi", poundForce.Over(inch.Power(2 * Dimension.Whole)!).Named("psi"), prefixes: false);
        _ = Register("atm", "atmosphere", pascal.ScaledBy(Scale.Integer(101325)).Named("atm"), prefixes: false);
        _ = Register("Torr", "torr", pascal.ScaledBy(Ratio(101325, 760)).Named("Torr"), prefixes: false);
        _ = Register("L|l", "liter|litre", metre.Power(3 * Dimension.Whole)!.ScaledBy(Scale.TenTo(-3)).Named("L"), prefixes: true);
        _ = Register("kn|kt", "knot", nauticalMile.Over(hour).Named("kn"), prefixes: false);
        _ = Register("mph", "mph", mile.Over(hour).Named("mph"), prefixes: false);
        // Electricity, substance and light (the SI Brochure; the gallon 231 and 277.42 of their cubes, the inch of mercury at 0 degC).
        Unit ampere = Base("A", "ampere", Dimension.Of(current: 1), prefixes: true);
        Unit volt = Register("V", "volt", watt.Over(ampere).Named("V"), prefixes: true);
        _ = Register("Ω|Ohm|ohm", "ohm", volt.Over(ampere).Named("Ω"), prefixes: true);
        _ = Register("S", "siemens|mho", ampere.Over(volt).Named("S"), prefixes: true);
        Unit coulomb = Register("C", "coulomb", ampere.Times(second).Named("C"), prefixes: true);
        _ = Register("Ah", "amperehour", ampere.Times(hour).Named("Ah"), prefixes: true);
        _ = Register("F", "farad", coulomb.Over(volt).Named("F"), prefixes: true);
        Unit weber = Register("Wb", "weber", volt.Times(second).Named("Wb"), prefixes: true);
        _ = Register("H", "henry|henrie", weber.Over(ampere).Named("H"), prefixes: true);
        Unit tesla = Register("T", "tesla", weber.Over(metre).Over(metre).Named("T"), prefixes: true);
        _ = Register("G", "gauss", tesla.ScaledBy(Scale.TenTo(-4)).Named("G"), prefixes: true);
        _ = Base("mol", "mole", Dimension.Of(amount: 1), prefixes: true);
        Unit candela = Base("cd", "candela", Dimension.Of(light: 1), prefixes: true);
        _ = Register("lm", "lumen", candela.Named("lm"), prefixes: true);
        _ = Register("lx", "lux", candela.Over(metre).Over(metre).Named("lx"), prefixes: true);
        Unit cubicInch = inch.Power(3 * Dimension.Whole)!;
        _ = Register("gal|galUS", "usgallon|gallon", cubicInch.ScaledBy(Scale.Integer(231)).Named("gal"), prefixes: false);
        _ = Register("galUK", "ukgallon|imperialgallon", metre.Power(3 * Dimension.Whole)!.ScaledBy(Scale.Decimal("0.00454609")).Named("galUK"), prefixes: false);
        _ = Register("mmHg", "millimeterofmercury", pascal.ScaledBy(Scale.Decimal("133.322387415")).Named("mmHg"), prefixes: false);
        _ = Register("inHg", "inchofmercury", pascal.ScaledBy(Scale.Decimal("133.322387415")).ScaledBy(Scale.Decimal("25.4")).Named("inHg"), prefixes: false);
        _ = Register("%", "percent", new Unit("%", default, Scale.TenTo(-2)), prefixes: false);
        _ = Register("1", "decimalfraction", Unit.One, prefixes: false);
        _ = Register("ppm", "partspermillion", new Unit("ppm", default, Scale.TenTo(-6)), prefixes: false);
    }

    /// <summary>The unit of a symbol, with an SI prefix where the unit takes one: <c>mm</c>, <c>lbf</c>, <c>kN</c>.</summary>
    internal static Unit? BySymbol(string symbol)
    {
        if (_bySymbol.TryGetValue(symbol, out Entry found))
        {
            return found.Unit;
        }

        for (int length = 1; length <= 2 && length < symbol.Length; length++)
        {
            if (_symbolPrefixes.TryGetValue(symbol.Substring(0, length), out int power)
                && _bySymbol.TryGetValue(symbol.Substring(length), out found) && found.Prefixes)
            {
                return Prefixed(symbol, found.Unit, power);
            }
        }

        return null;
    }

    /// <summary>The unit of a lower-case singular English word, with a prefix where the unit takes one: <c>millimeter</c>.</summary>
    internal static Unit? ByWord(string word)
    {
        if (_byWord.TryGetValue(word, out Entry found))
        {
            return found.Unit;
        }

        foreach (KeyValuePair<string, int> prefix in _wordPrefixes)
        {
            if (word.StartsWith(prefix.Key, StringComparison.Ordinal)
                && _byWord.TryGetValue(word.Substring(prefix.Key.Length), out found) && found.Prefixes)
            {
                return Prefixed(PrefixSymbol(prefix.Value) + found.Unit.Symbol, found.Unit, prefix.Value);
            }
        }

        return null;
    }

    private static Unit ScaledBy(this Unit unit, Scale scale) => new(unit.Symbol, unit.Dimension, unit.Scale.Times(scale), unit.Kind);

    private static Unit Energy(Unit unit, string symbol) => new(symbol, unit.Dimension, unit.Scale, Kind.Energy);

    private static Unit Prefixed(string symbol, Unit unit, int power) => unit.ScaledBy(Scale.TenTo(power)).Named(symbol);

    private static string PrefixSymbol(int power) => power == -6 ? "µ" : _symbolPrefixes.FirstOrDefault(p => p.Value == power).Key ?? $"10^{power} ";

    private static Scale Ratio(long above, long below) => Scale.Integer(above).Over(Scale.Integer(below));

    private static Unit Base(string symbols, string words, Dimension dimension, bool prefixes = false) =>
        Add(symbols, words, dimension, Scale.One, prefixes);

    private static Unit Add(string symbols, string words, Dimension dimension, Scale scale, bool prefixes = false) =>
        Register(symbols, words, new Unit(symbols.Split('|')[0], dimension, scale), prefixes);

    private static Unit Multiple(string symbols, string words, Unit of, Scale scale, bool prefixes = false) =>
        Register(symbols, words, of.ScaledBy(scale).Named(symbols.Split('|')[0]), prefixes);

    private static Unit Register(string symbols, string words, Unit unit, bool prefixes)
    {
        Unit named = unit.Named(symbols.Split('|')[0]);
        foreach (string symbol in symbols.Split('|'))
        {
            _bySymbol.Add(symbol, new Entry(named, prefixes));
        }

        foreach (string word in words.Split('|'))
        {
            _byWord.Add(word, new Entry(named, prefixes));
        }

        return named;
    }

    private static KeyValuePair<string, int> Pair(string prefix, int power) => new(prefix, power);

    private readonly struct Entry(Unit unit, bool prefixes)
    {
        internal Unit Unit { get; } = unit;

        internal bool Prefixes { get; } = prefixes;
    }
}
