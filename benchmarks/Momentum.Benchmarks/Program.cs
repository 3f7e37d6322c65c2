using BenchmarkDotNet.Running;
using Momentum.Benchmarks.Integration;

// "work-precision SOURCES RESULTS" compares with solvers in other languages; anything else goes to BenchmarkDotNet.
if (args is ["work-precision", string sources, string results])
{
    WorkPrecision.Run(sources, results);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
