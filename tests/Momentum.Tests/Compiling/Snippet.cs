using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Momentum.Tests.Compiling;

/// <summary>
/// Statements of user code, in two forms that differ in one place, written <c>«right|wrong»</c>. The right form must
/// compile against the real library, so that the wrong one is known to fail for the stated reason and no other.
/// </summary>
internal sealed class Snippet
{
    // What the tests run on is what the snippets are compiled against: no second copy of the reference assemblies.
    private static readonly ImmutableArray<MetadataReference> _references =
    [
        .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(path => IsOfTheRuntime(path) || IsOfTheLibrary(path))
            .Select(path => MetadataReference.CreateFromFile(path)),
    ];

    private static readonly CSharpParseOptions _language = new(LanguageVersion.CSharp14);

    private static readonly CSharpCompilationOptions _options = new(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable);

    private static readonly SyntaxTree _given = CSharpSyntaxTree.ParseText(Given.Source, _language);

    private readonly string _before;
    private readonly string _right;
    private readonly string _wrong;
    private readonly string _after;

    internal Snippet(string text)
    {
        string[] parts = text.Split('«', '|', '»');
        if (parts.Length != 4)
        {
            throw new ArgumentException($"A snippet has one place written «right|wrong», and no other |: {text}", nameof(text));
        }

        (_before, _right, _wrong, _after) = (parts[0], parts[1], parts[2], parts[3]);
    }

    internal IReadOnlyList<string> ErrorsOfTheRightForm() => Errors(_before + _right + _after);

    internal IReadOnlyList<string> ErrorsOfTheWrongForm() => Errors(_before + _wrong + _after);

    private static string[] Errors(string statements)
    {
        string code = $$"""
            using System;
            using Momentum.Frames;
            using Momentum.Inertia;
            using Momentum.Quantities;
            using UnitsNet;
            using UnitsNet.Units;
            using static Given;

            internal static class User
            {
                internal static void Do()
                {
                    {{statements}}
                }
            }
            """;
        CSharpCompilation compilation = CSharpCompilation.Create("Snippet", [_given, CSharpSyntaxTree.ParseText(code, _language)], _references, _options);
        return [.. compilation.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => $"{d.Id}: {d.GetMessage(System.Globalization.CultureInfo.InvariantCulture)}")];
    }

    private static bool IsOfTheRuntime(string path) => Path.GetDirectoryName(path) == Path.GetDirectoryName(typeof(object).Assembly.Location);

    private static bool IsOfTheLibrary(string path) => Path.GetFileName(path) is "Momentum.dll" or "UnitsNet.dll" or "MathNet.Numerics.dll";
}
