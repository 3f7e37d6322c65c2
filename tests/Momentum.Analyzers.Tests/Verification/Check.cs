using Microsoft.CodeAnalysis.CSharp.Testing;
using Microsoft.CodeAnalysis.Testing;

namespace Momentum.Analyzers.Tests.Verification;

/// <summary>Checks text in which <c>{|MOM001:…|}</c> marks where a rule must report, and nothing else may.</summary>
internal static class Check
{
    internal const string Head = """
        using System;
        using System.Collections.Generic;
        using System.Linq;
        using Momentum.Frames;
        using Momentum.Quantities;
        using UnitsNet;
        using UnitsNet.Units;

        """;

    // An empty set: the references are the running test's own, so that no package is fetched.
    internal static ReferenceAssemblies NoPackages { get; } = new("net10.0");

    internal static Task Members(string members, params (string Key, string Value)[] options) =>
        File(InClass(members), options);

    internal static Task Body(string statements, params (string Key, string Value)[] options) =>
        File(InBody(statements), options);

    internal static string InClass(string members) => Head + "class Craft\n{\n" + members + "\n}\n";

    internal static string InBody(string statements) => InClass(
        "void Run(Length a, Length b, Mass m, Force f, Torque t, Energy e, Angle angle, RotationalSpeed w, Frequency hz, MassMomentOfInertia inertia, Duration time)\n{\n" + statements + "\n}");

    internal static async Task File(string text, params (string Key, string Value)[] options)
    {
        CSharpAnalyzerTest<UnitAnalyzer, DefaultVerifier> test = new()
        {
            TestCode = text,
            ReferenceAssemblies = NoPackages,
            CompilerDiagnostics = CompilerDiagnostics.Errors,
        };
        test.TestState.AdditionalReferences.AddRange(Source.References);
        test.SolutionTransforms.Add((solution, project) => solution.WithProjectParseOptions(project, new Microsoft.CodeAnalysis.CSharp.CSharpParseOptions(Microsoft.CodeAnalysis.CSharp.LanguageVersion.Latest)));
        if (options.Length > 0)
        {
            test.TestState.AnalyzerConfigFiles.Add(("/.editorconfig", "root = true\n[*.cs]\n" + string.Join("\n", options.Select(o => $"{o.Key} = {o.Value}"))));
        }

        await test.RunAsync();
    }
}
