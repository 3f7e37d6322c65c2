using System.Globalization;
using System.Text;

namespace AnalyzerCost;

/// <summary>Writes a project of about 100,000 lines of ordinary code, of which a given share of methods compute with units.</summary>
internal static class CodeWriter
{
    private const int Files = 250;
    private const int MethodsPerFile = 20;
    private const int LinesPerMethod = 20;

    /// <summary>Writes the project.</summary>
    /// <param name="folder">An empty folder.</param>
    /// <param name="unitsNet">The units library's assembly.</param>
    /// <param name="analyzer">The analyzer's assembly, which the build takes when the property <c>Units</c> is true.</param>
    /// <param name="everyNth">Every so manyth method computes with units, on every line.</param>
    /// <returns>The number of lines.</returns>
    internal static int Write(string folder, string unitsNet, string analyzer, int everyNth)
    {
        File.WriteAllText(Path.Combine(folder, "Generated.csproj"), $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <TargetFramework>net10.0</TargetFramework>
                <Nullable>enable</Nullable>
                <ImplicitUsings>enable</ImplicitUsings>
              </PropertyGroup>
              <ItemGroup>
                <Reference Include="{unitsNet}" />
                <Analyzer Condition="'$(Units)' == 'true'" Include="{analyzer}" />
              </ItemGroup>
            </Project>
            """);
        int lines = 0;
        for (int file = 0; file < Files; file++)
        {
            StringBuilder text = new();
            _ = text.Append(CultureInfo.InvariantCulture, $"using UnitsNet;\n\nnamespace Generated;\n\npublic sealed class Part{file}\n{{\n    private readonly Dictionary<string, int> _names = new();\n\n");
            for (int method = 0; method < MethodsPerFile; method++)
            {
                bool units = ((file * MethodsPerFile) + method) % everyNth == 0;
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
                        foreach (string item in items.Where(i => i.Length > {{line}}).OrderBy(i => i, StringComparer.Ordinal))
                        {
                            total += _names.TryGetValue(item + "{{line}}", out int known) ? known : item.Length * limit;
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
