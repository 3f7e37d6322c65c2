using System.Globalization;
using AnalyzerCost;

// What the analyzer adds to a build of 100,000 lines. Two ways to look:
//   compiler [rounds [files]]   parse, bind, emit in this process, with the analyzer and without it (the harder test: no other
//                       analyzer shares the work of binding, and the rest of a build is left out)
//   build [rounds [files]]      dotnet build of the same project, with the analyzer and without it
// Both compare processor time, which other work on the machine disturbs less than the clock. What disturbs it still only
// ever adds, so the least of the rounds is compared; the medians are shown beside it.
string mode = args.Length > 0 ? args[0] : "compiler";
int rounds = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 5;
int files = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : CodeWriter.Files;
string root = Directory.CreateTempSubdirectory("analyzer-cost").FullName;
Console.WriteLine($"{mode}, least (and median) of {rounds} rounds, with and without in turn, processor seconds");
Console.WriteLine();
Console.WriteLine("| project | lines | without (s) | with (s) | added |");
Console.WriteLine("|---|---|---|---|---|");
try
{
    foreach ((string name, int everyNth) in new[] { ("no units", int.MaxValue), ("units in one method of 50", 50), ("units on every line", 1) })
    {
        string folder = Directory.CreateDirectory(Path.Combine(root, everyNth.ToString(CultureInfo.InvariantCulture))).FullName;
        int lines = CodeWriter.Write(folder, everyNth, files);
        ICost cost = mode == "build" ? new BuildCost(folder) : new CompilerCost(folder);
        _ = cost.Measure(withAnalyzer: false);
        _ = cost.Measure(withAnalyzer: true);
        List<double> without = [];
        List<double> with = [];
        for (int round = 0; round < rounds; round++)
        {
            without.Add(cost.Measure(withAnalyzer: false));
            with.Add(cost.Measure(withAnalyzer: true));
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {lines} | {without.Min():F2} ({Median(without):F2}) | {with.Min():F2} ({Median(with):F2}) | {(with.Min() / without.Min()) - 1:P1} |"));
    }
}
finally
{
    Directory.Delete(root, recursive: true);
}

static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
