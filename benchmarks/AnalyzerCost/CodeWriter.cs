using System.Globalization;
using System.Text;

namespace AnalyzerCost;

/// <summary>Writes a project of about 100,000 lines of ordinary code, of which a given share of methods compute with units.</summary>
internal static class CodeWriter
{
    /// <summary>So many files have 100,000 lines.</summary>
    internal const int Files = 205;

    private const int MethodsPerFile = 20;
    private const int LinesPerMethod = 20;

    // What the SDK's implicit usings are, for a compiler without it.
    internal const string Usings = "using System;using System.Collections.Generic;using System.IO;using System.Linq;using System.Threading;using System.Threading.Tasks;";

    /// <summary>Writes the source files.</summary>
    /// <param name="folder">An empty folder.</param>
    /// <param name="everyNth">Every so manyth method computes with units, on every line.</param>
    /// <param name="files">How many files.</param>
    /// <returns>The number of lines.</returns>
    internal static int Write(string folder, int everyNth, int files)
    {
        int lines = 0;
        for (int file = 0; file < files; file++)
        {
            StringBuilder text = new();
            _ = text.Append(CultureInfo.InvariantCulture, $"using UnitsNet;\n\nnamespace Generated;\n\npublic sealed class Part{file}\n{{\n    private readonly Dictionary<string, int> _names = new();\n\n");
            for (int method = 0; method < MethodsPerFile; method++)
            {
                bool units = ((file * MethodsPerFile) + method + 1) % everyNth == 0;
                _ = units ? Units(text, method) : Ordinary(text, method);
            }

            string all = text.Append("}\n").ToString();
            lines += all.AsSpan().Count('\n');
            File.WriteAllText(Path.Combine(folder, $"Part{file}.cs"), all);
        }

        return lines;
    }

    private static StringBuilder Ordinary(StringBuilder text, int method)
    {
        _ = text.Append(CultureInfo.InvariantCulture, $"    public int Handle{method}(IReadOnlyList<string> items, int limit)\n    {{\n        int total = 0;\n");
        for (int line = 0; line < LinesPerMethod / 5; line++)
        {
            _ = text.Append(CultureInfo.InvariantCulture, $$"""
                        foreach (string item in items)
                        {
                            if (item.Length > {{line}} + limit) { total += item.Length * limit; }
                            total += _names.TryGetValue(item + "{{line}}", out int known) ? known : Math.Max(item.Length, limit);
                        }

                """);
        }

        return text.Append("        return total;\n    }\n\n");
    }

    private static StringBuilder Units(StringBuilder text, int method)
    {
        _ = text.Append(CultureInfo.InvariantCulture, $"    public Energy Compute{method}(Length arm, Mass mass, RotationalSpeed spin, MassMomentOfInertia inertia, Duration step)\n    {{\n        double energy = 0;\n");
        for (int line = 0; line < LinesPerMethod / 5; line++)
        {
            _ = text.Append(CultureInfo.InvariantCulture, $$"""
                        double radius{{line}} = arm.Meters + Length.FromMillimeters({{line + 1}}).Meters;
                        double rate{{line}} = spin.RadiansPerSecond + (0.5 * Angle.FromDegrees({{line}}).Radians / step.Seconds);
                        double rim{{line}} = radius{{line}} * rate{{line}} * Math.Cos(rate{{line}} * step.Seconds);
                        energy += 0.5 * mass.Kilograms * rim{{line}} * rim{{line}};
                        energy += 0.5 * inertia.KilogramSquareMeters * rate{{line}} * rate{{line}};

                """);
        }

        return text.Append("        return Energy.FromJoules(energy);\n    }\n\n");
    }
}
