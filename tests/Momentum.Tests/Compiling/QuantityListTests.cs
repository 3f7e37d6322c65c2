using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace Momentum.Tests.Compiling;

/// <summary>A new quantity or product is one row of Quantities.txt; a wrong row stops the build and says what is wrong.</summary>
public sealed class QuantityListTests
{
    private static readonly string _library = Path.GetFullPath(Path.Combine(Here(), "..", "..", "..", "src", "Momentum"));

    private static readonly string _list = File.ReadAllText(Path.Combine(_library, "Quantities", "Quantities.txt"));

    [Fact]
    public void A_row_makes_a_vector_quantity_of_one_that_UnitsNet_has_and_a_row_its_products()
    {
        string list = Added("Jerk | m/s³ | MetersPerSecondCubed | vector", "Jerk * Duration = Acceleration | vectors scalars | Change of acceleration: jerk times time.");
        Assert.Equal(
            "(2, 4, 6) m/s² [Body]; (2, 4, 6) m/s² [Body]; 6; (1, 2, 3) m/s³ [Body]",
            Says(list, """
                Vector<Jerk, Body> jerk = Vector<Jerk, Body>.FromSi(1, 2, 3);
                Duration time = Duration.FromSeconds(2);
                return $"{jerk * time}; {jerk.Times(time)}; {(Jerk.FromMetersPerSecondCubed(3) * time).MetersPerSecondSquared}; {jerk}";
                """));
    }

    [Fact]
    public void A_row_makes_a_whole_quantity_that_UnitsNet_lacks()
    {
        string list = Added(
            "ArealVelocity | m²/s | SquareMetersPerSecond | vector own | Area swept in a time. | square metres a second (m²/s) | SquareFeetPerSecond 0.09290304 square feet a second (ft²/s)",
            "Length x Speed = ArealVelocity | vectors | Twice the area that the displacement sweeps in a time.");
        Assert.Equal(
            "(0, 0, 6) m²/s [Body]; 0.09290304 m²/s; True",
            Says(list, """
                Vector<ArealVelocity, Body> swept = Vector<Length, Body>.FromSi(2, 0, 0).Cross(Vector<Speed, Body>.FromSi(0, 3, 0));
                ArealVelocity foot = ArealVelocity.FromSquareFeetPerSecond(1);
                return $"{swept}; {foot}; {foot < 2 * foot && foot.SquareFeetPerSecond == 1}";
                """));
    }

    [Theory]
    [InlineData("Jerk | m/s³ | MetersPerSecondCubed", "", "A quantity is written")]
    [InlineData("Jerk | m/s³ | MetersPerSecondCubed | vectr", "", "\"vectr\" says nothing here")]
    [InlineData("Jerk | m/s³ | MetersPerSecondCubed | exact", "", "\"vector\" or \"scalar\"")]
    [InlineData("Length | m | Meters | vector", "", "a row for Length already")]
    [InlineData("Unbalance | kg·m | KilogramMeters | scalar own | What it is. | kilogram metres | GramMeters", "", "A unit is written")]
    [InlineData("", "Jerk * Duration = Acceleration | vectors | Jerk.", "no row for Jerk")]
    [InlineData("", "Force * Length = Torque | vectors | No.", "one factor and the result are vectors")]
    [InlineData("", "Force . Length = Torque | vectors | No.", "with . both factors are")]
    [InlineData("", "Force x Length = Torque | vectors scalars | No.", "with x both factors")]
    [InlineData("", "Force ^ Length = Torque | vectors | No.", "The signs are")]
    [InlineData("", "Force Length = Torque | vectors | No.", "A product is written")]
    [InlineData("", "Mass * Speed = LinearMomentum | somewhere | No.", "of \"vectors\", of \"scalars\" or of both")]
    public void A_wrong_row_stops_the_build_and_says_its_line(string quantity, string product, string message)
    {
        Diagnostic error = Assert.Single(Compiled(Added(quantity, product), "return \"\";").Errors);
        Assert.Contains(message, error.GetMessage(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.StartsWith("Line ", error.GetMessage(CultureInfo.InvariantCulture), StringComparison.Ordinal);
    }

    private static string Added(string quantity, string product) =>
        $"{_list.Replace("[products]", $"{quantity}\n[products]", StringComparison.Ordinal)}\n{product}\n";

    /// <summary>What a method with this body returns, built with the lower floors of the library from this list.</summary>
    private static string Says(string list, string body)
    {
        (CSharpCompilation compilation, ImmutableArray<Diagnostic> wrongRows) = Compiled(list, body);
        Assert.Empty(wrongRows);
        using MemoryStream stream = new();
        var result = compilation.Emit(stream);
        Assert.True(result.Success, string.Join('\n', result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)));
        stream.Position = 0;
        AssemblyLoadContext context = new("quantities", isCollectible: true);
        try
        {
            return (string)context.LoadFromStream(stream).GetType("User")!.GetMethod("Say", BindingFlags.Static | BindingFlags.NonPublic)!.Invoke(null, null)!;
        }
        finally
        {
            context.Unload();
        }
    }

    private static (CSharpCompilation Compilation, ImmutableArray<Diagnostic> Errors) Compiled(string list, string body)
    {
        string user = $$"""
            global using System;
            global using System.Collections.Generic;
            global using System.Linq;
            using Momentum.Quantities;
            using UnitsNet;

            internal readonly struct Body : IFrame;

            internal static class User
            {
                internal static string Say()
                {
                    {{body}}
                }
            }
            """;
        CSharpParseOptions language = new(LanguageVersion.CSharp14);
        CSharpCompilation compilation = CSharpCompilation.Create(
            "Momentum",
            Directory.EnumerateFiles(_library, "*.cs").Concat(Directory.EnumerateFiles(Path.Combine(_library, "Quantities"), "*.cs"))
                .Select(path => CSharpSyntaxTree.ParseText(File.ReadAllText(path), language, path))
                .Append(CSharpSyntaxTree.ParseText(user, language)),
            ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
                .Where(path => Path.GetFileName(path) is not "Momentum.dll")
                .Select(path => MetadataReference.CreateFromFile(path)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));
        CSharpGeneratorDriver.Create([new QuantityGenerator.QuantityGenerator().AsSourceGenerator()], [new List(list)], language)
            .RunGeneratorsAndUpdateCompilation(compilation, out Compilation made, out ImmutableArray<Diagnostic> errors);
        return ((CSharpCompilation)made, errors);
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;

    private sealed class List(string text) : AdditionalText
    {
        public override string Path => "Quantities.txt";

        public override SourceText GetText(CancellationToken cancellationToken = default) => SourceText.From(text);
    }
}
