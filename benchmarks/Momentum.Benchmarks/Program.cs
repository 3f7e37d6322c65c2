using BenchmarkDotNet.Running;
using Momentum.Benchmarks.Integration;

// "work-precision PROBLEM LIBRARY SCRIPT RESULTS" compares with solvers in other languages (Integration/compare.sh calls it);
// anything else goes to BenchmarkDotNet.
Problem[] problems = [new PlanarDespin(), new DeploymentInSpace()];
if (args is ["work-precision", string name, string library, string script, string results])
{
    Problem problem = Array.Find(problems, p => p.Name == name)
        ?? throw new ArgumentException($"There is no problem '{name}'; there are {string.Join(", ", problems.Select(p => p.Name))}.");
    WorkPrecision.Run(problem, library, script, results);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
