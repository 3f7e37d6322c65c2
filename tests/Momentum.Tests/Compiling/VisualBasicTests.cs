using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.VisualBasic;

namespace Momentum.Tests.Compiling;

/// <summary>Visual Basic has no extension operators: there the products go by name.</summary>
public sealed class VisualBasicTests
{
    [Fact]
    public void Products_have_names_that_Visual_Basic_sees() => Assert.Empty(Errors("""
        Dim h As AngularMomentum = MassMomentOfInertia.FromKilogramSquareMeters(12).Times(RotationalSpeed.FromRadiansPerSecond(2))
        Dim rate As RotationalSpeed = h.DividedBy(MassMomentOfInertia.FromKilogramSquareMeters(12))
        Dim velocity As Vector(Of Speed, Body) = Vector(Of Speed, Body).FromSi(1, 2, 3)
        Dim momentum As Vector(Of LinearMomentum, Body) = velocity.Times(Mass.FromKilograms(2))
        Dim force As Vector(Of Force, Body) = momentum.DividedBy(Duration.FromSeconds(2))
        Dim torque As Vector(Of Torque, Body) = Vector(Of Length, Body).FromSi(0, 2, 0).Cross(force)
        Dim power As Power = force.Dot(velocity)
        """));

    [Fact]
    public void A_product_that_physics_lacks_does_not_compile_in_Visual_Basic_either() =>
        Assert.Contains(Errors("Dim wrong As Vector(Of LinearMomentum, Body) = Vector(Of Force, Body).FromSi(1, 2, 3).Times(Mass.FromKilograms(2))"), e => e.StartsWith("BC", StringComparison.Ordinal));

    private static string[] Errors(string statements)
    {
        string code = $"""
            Option Strict On
            Imports Momentum.Frames
            Imports Momentum.Quantities
            Imports UnitsNet

            Module User
                Sub [Do]()
                    {statements}
                End Sub
            End Module
            """;
        VisualBasicCompilation compilation = VisualBasicCompilation.Create(
            "Snippet",
            [VisualBasicSyntaxTree.ParseText(code)],
            ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path)),
            new VisualBasicCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        return [.. compilation.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => $"{d.Id}: {d.GetMessage(CultureInfo.InvariantCulture)}")];
    }
}
