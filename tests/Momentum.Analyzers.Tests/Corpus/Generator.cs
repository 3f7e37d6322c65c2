namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>
/// Writes classes that compute with bare numbers, right ones and ones with a single mistake. Whether a class is right is
/// known from numbers: the sizes of its units, taken from the units library, either multiply to the size of the result's or
/// they do not.
/// </summary>
internal sealed class Generator(ulong seed, string prefix)
{
    private static readonly string[] _unitRules = ["MOM001", "MOM002", "MOM003", "MOM004", "MOM005", "MOM006", "MOM008", "MOM009"];

    private static readonly Dictionary<string, string[]> _stems = new()
    {
        ["Length"] = ["length", "height", "radius", "distance"],
        ["Mass"] = ["mass", "payloadMass"],
        ["Duration"] = ["time", "delay", "burnDuration"],
        ["Angle"] = ["angle", "tilt"],
        ["RotationalSpeed"] = ["rate", "spin"],
        ["RotationalAcceleration"] = ["spinUp"],
        ["Speed"] = ["speed", "velocity"],
        ["Acceleration"] = ["acceleration"],
        ["Force"] = ["force", "thrust"],
        ["Torque"] = ["torque"],
        ["Energy"] = ["energy"],
        ["Power"] = ["power"],
        ["Pressure"] = ["pressure"],
        ["Impulse"] = ["impulse"],
        ["MassMomentOfInertia"] = ["inertia"],
        ["Area"] = ["area"],
        ["Volume"] = ["volume"],
        ["LinearDensity"] = ["cord"],
        ["Density"] = ["density"],
        ["ForcePerLength"] = ["stiffness"],
        ["RotationalStiffness"] = ["hinge"],
    };

    private readonly Dice _dice = new(seed);
    private int _count;

    internal IEnumerable<Snippet> Products(int count, bool seeded, bool names)
    {
        while (count > 0)
        {
            if (Product(seeded, names) is { } snippet)
            {
                count--;
                yield return snippet;
            }
        }
    }

    internal IEnumerable<Snippet> Particulars(int perCase, bool seeded)
    {
        foreach (Particular particular in Particular.All)
        {
            for (int i = 0; i < perCase; i++)
            {
                Draft draft = Begin();
                string[] rules = particular.Write(draft, seeded);
                yield return draft.Finish(seeded ? rules : [], namesOnly: false);
            }
        }
    }

    private Draft Begin() => new($"{prefix}{++_count}", _dice);

    private Snippet? Product(bool seeded, bool names)
    {
        // One time in three a single quantity, read in one unit and used in another.
        bool plain = _dice.Below(3) == 0;
        Formula formula = plain ? Plain(_dice.Of([.. _stems.Keys])) : _dice.Of(Formula.All);
        Measure[] factors = new Measure[formula.Factors.Length];
        Measure? result = null;
        if (formula.Factors.Append(formula.Result).Any(q => Choices(q, names).Count == 0))
        {
            return null;
        }

        for (int attempt = 0; result is null && attempt < 200; attempt++)
        {
            for (int i = 0; i < factors.Length; i++)
            {
                factors[i] = _dice.Of(Choices(formula.Factors[i], names));
            }

            double size = formula.Size(factors);
            result = Choices(formula.Result, names).FirstOrDefault(m => m.HasSize(size));
        }

        if (result is null)
        {
            return null;
        }

        if (seeded)
        {
            int wrong = _dice.Below(factors.Length);
            Measure[] others = [.. Choices(formula.Factors[wrong], names).Where(m => !m.HasSize(factors[wrong].Size))];
            if (others.Length == 0)
            {
                return null;
            }

            factors[wrong] = _dice.Of(others);
        }

        Draft draft = Begin();
        bool namedSource = names && _dice.Below(3) != 0;
        bool namedSink = names && (!namedSource || _dice.Below(2) == 0);
        string[] texts = [.. factors.Select(f => namedSource ? Named(draft, f) : Typed(draft, f))];
        string value = Shape(draft, formula, factors, texts);
        string[] rules = namedSink ? NamedSink(draft, result, value, namedSource) : TypedSink(draft, result, value, namedSource, !plain);
        return draft.Finish(seeded ? rules : [], names);
    }

    private static Formula Plain(string quantity) => new(quantity, f => f[0], [quantity], [1]);

    private static IReadOnlyList<Measure> Choices(string quantity, bool names) =>
        names ? [.. Measure.Of(quantity).Where(m => m.Suffixes.Count > 0)] : Measure.Of(quantity);

    private string Typed(Draft draft, Measure measure)
    {
        string field = "_" + draft.Fresh("stated");
        string parameter = draft.Fresh("q");
        switch (_dice.Below(6))
        {
            case 0:
                return draft.Parameter($"[Unit(\"{measure.Text}\")] double", parameter);
            case 1:
                draft.Member($"[Unit(\"{measure.Text}\")] private double {field};");
                return field;
            case 2:
                return $"(double){draft.Parameter(measure.Quantity, parameter)}.As({measure.Quantity}Unit.{measure.Singular})";
            case 3:
                draft.Member($"static double Read{parameter}({measure.Quantity} q) => {measure.Read("q")};");
                return $"Read{parameter}({draft.Parameter(measure.Quantity, parameter)})";
            default:
                return measure.Read(draft.Parameter(measure.Quantity, parameter));
        }
    }

    private string Named(Draft draft, Measure measure) => draft.Parameter("double", Name(draft, measure));

    private string Name(Draft draft, Measure measure)
    {
        string suffix = _dice.Of(measure.Suffixes);
        string stem = _dice.Of(_stems[measure.Quantity]);

        // A word in front keeps names apart: firstRateRpm, innerRate_rpm.
        string front = draft.Fresh("v");
        return front + char.ToUpperInvariant(stem[0]) + stem[1..] + suffix;
    }

    private string Shape(Draft draft, Formula formula, Measure[] factors, string[] texts)
    {
        int k = _dice.Below(texts.Length);
        switch (_dice.Below(5))
        {
            case 0:
                for (int i = 0; i < texts.Length; i++)
                {
                    string local = draft.Fresh("f");
                    draft.Statement($"double {local} = {texts[i]};");
                    texts[i] = local;
                }

                return formula.Write(texts);
            case 1:
                string law = draft.Fresh("Law");
                string[] names = [.. texts.Select((_, i) => $"p{i}")];
                draft.Member($"static double {law}({string.Join(", ", names.Select(n => "double " + n))}) => {formula.Write(names)};");
                return $"{law}({string.Join(", ", texts)})";
            case 2:
                texts[k] = draft.Carry(texts[k]);
                return formula.Write(texts);
            case 3:
                return draft.Carry(formula.Write(texts));
            default:
                return formula.Write(texts);
        }
    }

    private string[] TypedSink(Draft draft, Measure result, string value, bool namedSource, bool computed)
    {
        string rule;
        switch (_dice.Below(7))
        {
            case 0:
                draft.Member($"[Unit(\"{result.Text}\")] private double _sink;");
                draft.Statement($"_sink = {value};");
                rule = computed ? "MOM005" : "MOM003";
                break;
            case 1:
                draft.Return = $"[return: Unit(\"{result.Text}\")] double Run";
                draft.Statement($"return {value};");
                rule = computed ? "MOM005" : "MOM003";
                break;
            case 2:
                draft.Member($"static void Take([Unit(\"{result.Text}\")] double value) {{ }}");
                draft.Statement($"Take({value});");
                rule = computed ? "MOM005" : "MOM004";
                break;
            case 3:
                draft.Statement($"_ = {result.Read(draft.Parameter(result.Quantity, "other"))} + {value};");
                rule = "MOM001";
                break;
            case 4:
                draft.Statement($"bool larger = {result.Read(draft.Parameter(result.Quantity, "other"))} > {value};");
                rule = "MOM002";
                break;
            case 5:
                draft.Statement($"_ = new {result.Quantity}({(result.Quantity == "Power" ? $"(decimal)({value})" : value)}, {result.Quantity}Unit.{result.Singular});");
                rule = computed ? "MOM005" : "MOM004";
                break;
            default:
                draft.Statement($"_ = {result.Quantity}.From{result.Member}({value});");
                rule = computed ? "MOM005" : "MOM004";
                break;
        }

        if (result.Quantity is "RotationalSpeed" or "RotationalAcceleration" || result.Member == "Revolutions")
        {
            rule = "MOM008";
        }

        return namedSource ? ["MOM201"] : [rule, .. _unitRules];
    }

    private string[] NamedSink(Draft draft, Measure result, string value, bool namedSource)
    {
        string name = Name(draft, result);
        switch (_dice.Below(4))
        {
            case 0:
                draft.Member($"private double {name};");
                draft.Statement($"{name} = {value};");
                break;
            case 1:
                draft.Member($"static void Take(double {name}) {{ }}");
                draft.Statement($"Take({value});");
                break;
            case 2 when namedSource:
                draft.Statement($"double sum = {draft.Parameter("double", name)} + {value};");
                break;
            default:
                draft.Statement($"double {name} = {value};");
                break;
        }

        return namedSource ? ["MOM101"] : ["MOM201"];
    }
}
