using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using Momentum.Cases.Sections;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>
/// Everything uncertain about a case: each quantity with a tolerance, wherever it stands, and what no key states. A drawn
/// value takes the place of the stated one, so that a tolerance acts wherever the value does.
/// </summary>
/// <remarks>
/// A case draws one level between 0 and 1 for each input, and one more for each weight or cord where that is stated; each has
/// a stream of random numbers named after its key, so that a new tolerance never changes the draws of the others.
/// </remarks>
internal sealed class CaseInputs
{
    /// <summary>In place of a level: the nominal value.</summary>
    public const double Nominal = double.NaN;

    private readonly Case _given;
    private readonly Plan _plan;
    private readonly Plan? _despin;
    private readonly List<InputDraws> _draws = [];
    private readonly List<CaseInput> _inputs = [];
    private readonly List<string> _exact = [];
    private readonly List<(int[] Levels, double Coefficient)> _groups = [];
    private readonly int _direction = -1;
    private readonly int _late = -1;

    public CaseInputs(Case given)
    {
        _given = given;
        _plan = PlanOf(given, "", used: true);
        _despin = _plan.Sections.FirstOrDefault(s => s.Key.Name == "despin").Plan;
        if (given.Spin.Nutation is not null && given.Bench is null)
        {
            _direction = Unstated("direction of the nutation before release");
        }

        if (given.Despin.SecondWeightDelay is not null)
        {
            // Part of the delay: which of the weights it is.
            _late = _draws.Count;
            _draws.Add(InputDraws.Named("despin.second_weight_delay, which weight"));
        }

        foreach (CorrelatedSection group in given.Correlated)
        {
            int number = _groups.Count;
            foreach (string key in group.Keys)
            {
                int i = _inputs.FindIndex(input => input.Path == key);
                _inputs[i] = _inputs[i] with { Group = number };
            }

            _groups.Add(([.. group.Keys.Select(key => _inputs.Find(i => i.Path == key)!.First)], group.Coefficient.Value.DecimalFractions));
        }
    }

    /// <summary>Refuses correlated groups that no draws have.</summary>
    public static void Judge(Case given, Findings findings)
    {
        HashSet<string> uncertain = [.. new CaseInputs(given with { Correlated = [] }).All.Where(i => i.Tolerance.Shared.Shape != ScatterShape.None).Select(i => i.Path)];
        HashSet<string> taken = [];
        foreach (CorrelatedSection group in given.Correlated)
        {
            foreach (string key in group.Keys)
            {
                if (!uncertain.Contains(key))
                {
                    string? near = Nearest.To(key, uncertain);
                    findings.Error(
                        group, nameof(CorrelatedSection.Keys), $"{Syntax.TomlText.Glimpse(key)} is no quantity of this case with a tolerance that all share",
                        uncertain.Count == 0 ? "keys with a tolerance" : string.Join(", ", uncertain), near is null ? "Name keys that have a tolerance, with their sections." : $"Did you mean {near}?");
                }
                else if (!taken.Add(key))
                {
                    findings.Error(group, nameof(CorrelatedSection.Keys), $"{key} is in two groups, or twice in one", "each key once", "Put all that moves together into one group.");
                }
            }

            double coefficient = group.Coefficient.Value.DecimalFractions;
            if (group.Keys.Count < 2 || coefficient * (group.Keys.Count - 1) < -1)
            {
                findings.Error(
                    group, nameof(CorrelatedSection.Coefficient), group.Keys.Count < 2 ? "fewer than two keys have nothing to move with" : "so many errors cannot all move against one another so strongly",
                    group.Keys.Count < 2 ? "two keys or more" : FormattableString.Invariant($"{-1.0 / (group.Keys.Count - 1):0.###} to 1 for {group.Keys.Count} keys"), "Give two keys or more, and a coefficient that they can have.");
            }
        }
    }

    /// <summary>The inputs, in the order of the file, those that no key states last.</summary>
    public IReadOnlyList<CaseInput> All => _inputs;

    /// <summary>Paths of the quantities that are stated without a tolerance, and so taken as exact.</summary>
    public IReadOnlyList<string> Exact => _exact;

    /// <summary>Number of levels that a case draws.</summary>
    public int Levels => _draws.Count;

    /// <summary>Whether the case states any tolerance; the direction of a wobble is unknown without one.</summary>
    public bool AnyStated => _inputs.Exists(i => i.Text.Length > 0);

    /// <summary>Whether anything at all is uncertain.</summary>
    public bool Any => _inputs.Count > 0;

    /// <summary>Draws the independent levels of a case.</summary>
    public double[] LevelsOf(ulong seed, long number)
    {
        double[] levels = new double[Levels];
        for (int i = 0; i < levels.Length; i++)
        {
            levels[i] = _draws[i].Level(seed, number);
        }

        return levels;
    }

    /// <summary>The case of a number.</summary>
    public DrawnCase Draw(ulong seed, long number) => Draw(LevelsOf(seed, number));

    /// <summary>The case of independent levels; correlated inputs are made to move together here.</summary>
    public DrawnCase Draw(double[] levels)
    {
        foreach ((int[] group, double coefficient) in _groups)
        {
            double[] mixed = [.. group.Select(i => levels[i])];
            if (!mixed.Any(double.IsNaN))
            {
                CorrelatedLevels.Mix(mixed, coefficient);
                for (int i = 0; i < group.Length; i++)
                {
                    levels[group[i]] = mixed[i];
                }
            }
        }

        var drawn = (Case)Drawn(_given, _plan, levels, -1);
        bool unlike = _despin is { } plan && plan.AnyEach;
        DespinSection[] cords = new DespinSection[_given.Despin.Weights];
        for (int i = 0; i < cords.Length; i++)
        {
            cords[i] = unlike ? (DespinSection)Drawn(_given.Despin, _despin!, levels, i) : drawn.Despin;
        }

        double direction = _direction < 0 || double.IsNaN(levels[_direction]) ? 0 : levels[_direction];
        double late = _late < 0 || double.IsNaN(levels[_late]) ? 0 : levels[_late];
        return new DrawnCase(drawn, cords, Angle.FromRadians(2 * Math.PI * direction), Math.Min((int)(late * cords.Length), cords.Length - 1));
    }

    /// <summary>Levels with all inputs at their nominal values.</summary>
    public double[] AllNominal()
    {
        double[] levels = new double[Levels];
        Array.Fill(levels, Nominal);
        return levels;
    }

    /// <summary>The levels that belong to an input: its own, and for the delay of a weight which one it is.</summary>
    public IEnumerable<int> LevelsOf(CaseInput input)
    {
        IEnumerable<int> own = Enumerable.Range(input.First, input.Levels);
        return _late >= 0 && input.Path == "despin.second_weight_delay" ? own.Append(_late) : own;
    }

    private int Unstated(string words)
    {
        int level = _draws.Count;
        _draws.Add(InputDraws.Named(words));
        _inputs.Add(new CaseInput(words, 0, "", new Tolerance(ScatterLaw.Uniform(Math.PI, Math.PI), ScatterLaw.None), "", level, 1));
        return level;
    }

    private Plan PlanOf(Section section, string path, bool used)
    {
        var plan = new Plan();
        foreach (KeyDescription key in SectionDescription.Of(section.GetType()).Keys)
        {
            string name = KeyDescription.Join(path, key.Name);
            object? value = key.Get(section);
            switch (key.Form)
            {
                case KeyForm.Quantity when value is IStated stated:
                    AddValue(plan, section, key, 0, name, stated, used);
                    break;

                case KeyForm.Triple when value is Array items:
                    for (int i = 0; i < items.Length; i++)
                    {
                        AddValue(plan, section, key, i, $"{name}[{i}]", (IStated)items.GetValue(i)!, used);
                    }

                    break;

                case KeyForm.Section when value is Section inner:
                    AddSection(plan, key, 0, inner, name, used && !key.NotUsedYet);
                    break;

                case KeyForm.Sections when value is Array list:
                    for (int i = 0; i < list.Length; i++)
                    {
                        AddSection(plan, key, i, (Section)list.GetValue(i)!, $"{name}[{i}]", used && !key.NotUsedYet);
                    }

                    break;

                default:
                    break;
            }
        }

        return plan;
    }

    private void AddSection(Plan plan, KeyDescription key, int item, Section section, string path, bool used)
    {
        Plan inner = PlanOf(section, path, used);
        if (!inner.IsEmpty)
        {
            plan.Sections.Add((key, item, inner));
        }
    }

    private void AddValue(Plan plan, Section section, KeyDescription key, int item, string path, IStated stated, bool used)
    {
        if (stated.Tolerance.IsNone)
        {
            if (used && key.NoTolerance is null)
            {
                _exact.Add(path);
            }

            return;
        }

        int first = _draws.Count;
        int shared = -1;
        int each = -1;
        if (stated.Tolerance.Shared.Shape != ScatterShape.None)
        {
            shared = first;
            _draws.Add(InputDraws.Named(path));
        }

        if (stated.Tolerance.Each.Shape != ScatterShape.None)
        {
            each = _draws.Count;
            for (int i = 0; i < _given.Despin.Weights; i++)
            {
                _draws.Add(InputDraws.Named(FormattableString.Invariant($"{path}, cord {i}")));
            }
        }

        double nominal = key.IsScatter ? 0 : key.Quantity!.SiOf(stated);
        plan.Values.Add(new Value(key, item, nominal, stated.Tolerance, shared, each));
        _inputs.Add(new CaseInput(path, nominal, key.Quantity!.SiUnit == "1" ? "" : key.Quantity.SiUnit, stated.Tolerance, stated.Text, first, _draws.Count - first)
        {
            Section = section,
            Property = key.Property,
        });
    }

    /// <summary>A copy of a section with drawn values.</summary>
    /// <param name="section">The section.</param>
    /// <param name="plan">What of it is drawn.</param>
    /// <param name="levels">The levels of the case.</param>
    /// <param name="cord">Whose own errors are added; −1 for nobody's.</param>
    private static Section Drawn(Section section, Plan plan, double[] levels, int cord)
    {
        Section copy = section with { };
        foreach (Value value in plan.Values)
        {
            double offset = At(value.Tolerance.Shared, value.Shared < 0 ? Nominal : levels[value.Shared])
                + (cord < 0 ? 0 : At(value.Tolerance.Each, value.Each < 0 ? Nominal : levels[value.Each + cord]));
            object drawn = value.Key.Quantity!.StateExactly(Math.Clamp(value.Nominal + offset, value.Key.Least, value.Key.Most));
            Put(value.Key, value.Item, drawn);
        }

        foreach ((KeyDescription key, int item, Plan inner) in plan.Sections)
        {
            object held = key.Get(copy)!;
            Put(key, item, Drawn((Section)(key.Form == KeyForm.Sections ? ((Array)held).GetValue(item)! : held), inner, levels, cord));
        }

        return copy;

        void Put(KeyDescription key, int item, object value)
        {
            if (key.Form is KeyForm.Triple or KeyForm.Sections)
            {
                var list = (Array)((Array)key.Get(copy)!).Clone();
                list.SetValue(value, item);
                key.Set(copy, list);
            }
            else
            {
                key.Set(copy, value);
            }
        }
    }

    private static double At(ScatterLaw law, double level) => double.IsNaN(level) ? 0 : law.At(level);

    private sealed record Value(KeyDescription Key, int Item, double Nominal, Tolerance Tolerance, int Shared, int Each);

    private sealed class Plan
    {
        public List<Value> Values { get; } = [];

        public List<(KeyDescription Key, int Item, Plan Plan)> Sections { get; } = [];

        public bool IsEmpty => Values.Count == 0 && Sections.Count == 0;

        public bool AnyEach => Values.Exists(v => v.Each >= 0) || Sections.Exists(s => s.Plan.AnyEach);
    }
}
