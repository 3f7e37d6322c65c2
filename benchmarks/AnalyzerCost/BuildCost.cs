using System.Diagnostics;
using System.Globalization;

namespace AnalyzerCost;

/// <summary>
/// Builds by the SDK, its own analyzers on, without build or compiler server: every process is a child that ends, and its
/// start and just-in-time compilation are counted.
/// </summary>
internal sealed class BuildCost : ICost
{
    private readonly string _folder;
    private bool _restored;

    internal BuildCost(string folder)
    {
        _folder = folder;
        File.WriteAllText(Path.Combine(folder, "Generated.csproj"), $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <TargetFramework>net10.0</TargetFramework>
                <Nullable>enable</Nullable>
                <ImplicitUsings>enable</ImplicitUsings>
              </PropertyGroup>
              <ItemGroup>
                <Reference Include="{Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll")}" />
                <Analyzer Condition="'$(Units)' == 'true'" Include="{Path.Combine(AppContext.BaseDirectory, "Momentum.Analyzers.dll")}" />
              </ItemGroup>
            </Project>
            """);
    }

    public double Measure(bool withAnalyzer)
    {
        string command = $"dotnet build -v q -nologo -nodeReuse:false {(_restored ? "--no-restore --no-incremental" : string.Empty)} -p:UseSharedCompilation=false -p:Units={(withAnalyzer ? "true" : "false")}";
        _restored = true;
        ProcessStartInfo start = new("bash", ["-c", $"TIMEFORMAT='%U %S'; time {command} >/dev/null"]) { WorkingDirectory = _folder, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        string[] times = process.StandardError.ReadToEnd().Trim().Split('\n')[^1].Split(' ');
        process.WaitForExit();
        return process.ExitCode == 0
            ? times.Sum(t => double.Parse(t, CultureInfo.InvariantCulture))
            : throw new InvalidOperationException($"The generated project in {_folder} does not build.");
    }
}
