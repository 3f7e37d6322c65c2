using System.Text;

namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>A class being written: what it declares, and the statements of the one method that matters.</summary>
internal sealed class Draft(string name, Dice dice)
{
    private readonly List<string> _members = [];
    private readonly List<string> _parameters = [];
    private readonly List<string> _statements = [];
    private int _count;

    internal Dice Dice { get; } = dice;

    /// <summary>What stands before the method: an attribute on its return.</summary>
    internal string Return { get; set; } = "void Run";

    internal string Fresh(string stem) => $"{stem}{++_count}";

    internal void Member(string text) => _members.Add(text);

    internal void Statement(string text) => _statements.Add(text);

    internal string Parameter(string type, string parameterName)
    {
        _parameters.Add($"{type} {parameterName}");
        return parameterName;
    }

    internal Snippet Finish(IReadOnlyList<string> seeded, bool namesOnly)
    {
        StringBuilder text = new();
        _ = text.Append("class ").Append(name).Append("\n{\n");
        foreach (string member in _members)
        {
            _ = text.Append("    ").Append(member).Append('\n');
        }

        _ = text.Append("    ").Append(Return).Append('(').Append(string.Join(", ", _parameters.Append("bool flag").Append("int mode"))).Append(")\n    {\n");
        foreach (string statement in _statements)
        {
            _ = text.Append("        ").Append(statement).Append('\n');
        }

        _ = text.Append("    }\n}\n");
        return new(name, text.ToString(), seeded, namesOnly);
    }

    /// <summary>Carries a number by some way of the language before it is used.</summary>
    internal string Carry(string value)
    {
        string carrier = Fresh("carried");
        switch (Dice.Below(14))
        {
            case 0:
                Statement($"double {carrier} = {value};");
                return carrier;
            case 1:
                Statement($"var ({carrier}, other{carrier}) = ({value}, mode);");
                return carrier;
            case 2:
                Statement($"double[] {carrier} = {{ {value}, {value} }};");
                return $"{carrier}[1]";
            case 3:
                Statement($"double {carrier} = flag ? {value} : {value} / 2;");
                return carrier;
            case 4:
                Statement($"double {carrier} = mode switch {{ 1 => {value}, 2 => 2 * ({value}), _ => 0 }};");
                return carrier;
            case 5:
                Statement($"double {carrier} = 0;");
                Statement($"for (int turn = 0; turn < 3; turn++) {{ {carrier} += {value}; }}");
                return carrier;
            case 6:
                Statement($"Func<double, double> {carrier} = v => 2 * v;");
                return $"{carrier}({value})";
            case 7:
                Statement($"double {carrier}(double v) => v;");
                return $"{carrier}({value})";
            case 8:
                Member($"static double Pass{carrier}(double v) {{ double w = v; return w; }}");
                return $"Pass{carrier}({value})";
            case 9:
                return $"Math.Abs({value})";
            case 10:
                Statement($"double? {carrier} = {value};");
                return $"{carrier}.Value";
            case 11:
                Statement($"var {carrier} = new List<double>();");
                Statement($"{carrier}.Add({value});");
                return $"{carrier}[0]";
            case 12:
                Statement($"double {carrier} = 1.5;");
                Statement($"if (flag) {{ {carrier} = {value}; }}");
                return carrier;
            default:
                return value;
        }
    }
}
