using System.Diagnostics;
using System.Globalization;
using AnalyzerCost;

// What the analyzer adds to a build: the same project built with it and without it, in turn, by the SDK's own compiler and
// with the SDK's own analyzers on. Compared by the processor time of the compiler process, which other work on the machine
// disturbs little; the compiler's start and the analyzer's just-in-time compilation are in it.
int rounds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 5;
string root = Directory.CreateTempSubdirectory("analyzer-cost").FullName;
string unitsNet = Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll");
string analyzer = Path.Combine(AppContext.BaseDirectory, "Momentum.Analyzers.dll");
Console.WriteLine("| project | lines | without (s) | with (s) | added |");
Console.WriteLine("|---|---|---|---|---|");
try
{
    foreach ((string name, int everyNth) in new[] { ("units in one method of 50", 50), ("units on every line", 1) })
    {
        string folder = Directory.CreateDirectory(Path.Combine(root, everyNth.ToString(CultureInfo.InvariantCulture))).FullName;
        int lines = CodeWriter.Write(folder, unitsNet, analyzer, everyNth);
        _ = Build(folder, units: true, restore: true);
        List<double> without = [];
        List<double> with = [];
        for (int round = 0; round < rounds; round++)
        {
            without.Add(Build(folder, units: false, restore: false));
            with.Add(Build(folder, units: true, restore: false));
        }

        double baseline = Median(without);
        double loaded = Median(with);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {lines} | {baseline:F2} | {loaded:F2} | {(loaded / baseline) - 1:P1} |"));
    }
}
finally
{
    Directory.Delete(root, recursive: true);
}

static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

// The processor time of the whole build, compiler included: no server, so that every process is a child that ends.
static double Build(string folder, bool units, bool restore)
{
    string command = $"dotnet build -v q -nologo -nodeReuse:false {(restore ? string.Empty : "--no-restore --no-incremental")} -p:UseSharedCompilation=false -p:Units={(units ? "true" : "false")}";
    ProcessStartInfo start = new("bash", ["-c", $"TIMEFORMAT='%U %S'; time {command} >/dev/null"]) { WorkingDirectory = folder, RedirectStandardError = true };
    using Process process = Process.Start(start)!;
    string[] times = process.StandardError.ReadToEnd().Trim().Split('\n')[^1].Split(' ');
    process.WaitForExit();
    if (process.ExitCode != 0)
    {
        throw new InvalidOperationException($"The generated project in {folder} does not build.");
    }

    return times.Sum(t => double.Parse(t, CultureInfo.InvariantCulture));
}
