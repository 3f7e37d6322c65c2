using System.Text.RegularExpressions;

namespace Momentum.Package.Tests;

/// <summary>What a user gets who adds the package to a new project.</summary>
[Collection(PackedOnce.Name)]
public sealed partial class ConsumerTests(Packages packages)
{
    // A uniform rod's spin by hand: I = 12 kg·m², w = 2 rad/s, so h = 24 kg·m²/s; a quarter turn about z takes x to y.
    private const string Program = """
        using Momentum.Frames;
        using Momentum.Quantities;
        using UnitsNet;

        AngularMomentum h = MassMomentOfInertia.FromKilogramSquareMeters(12) * RotationalSpeed.FromRadiansPerSecond(2);
        Console.WriteLine(h);

        Rotation<Body, Inertial> attitude = Rotation<Body, Inertial>.About(Direction<Body>.ZAxis, Angle.FromDegrees(90));
        Vector<Force, Body> push = Vector<Force, Body>.FromSi(3, 0, 0);
        Vector<Force, Inertial> seen = attitude.Apply(push);
        Console.WriteLine(seen.EqualsWithin(Vector<Force, Inertial>.FromSi(0, 3, 0), Force.FromNewtons(1e-15)));

        Vector<Torque, Body> torque = Vector<Length, Body>.FromSi(0, 2, 0).Cross(push);
        Console.WriteLine(torque.Z.NewtonMeters);
        """;

    private const string Printed = "24 kg·m²/s\nTrue\n-6\n";

    private static readonly string[] _assembliesBesideTheProgram = ["MathNet.Numerics.dll", "Momentum.dll", "Plain.dll", "UnitsNet.dll"];

    [Fact]
    public void A_new_project_builds_without_a_warning_runs_and_takes_no_compiler_along()
    {
        Consumer consumer = new Consumer(packages, "Plain").With(Program);
        Assert.Equal(Printed, consumer.BuildsAndRuns());
        Assert.Equal(_assembliesBesideTheProgram, consumer.OutputFiles.Where(f => Path.GetExtension(f) is ".dll" && !f.EndsWith(".resources.dll", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Mixed_frames_stop_the_build()
    {
        string output = new Consumer(packages, "Mixed").With(Program + "\nConsole.WriteLine(push + seen);\n").FailsToBuild();
        Assert.Contains("error CS0019: Operator '+' cannot be applied to operands of type 'Vector<Force, Body>' and 'Vector<Force, Inertial>'", output, StringComparison.Ordinal);
    }

    // F# sees no extension operators of C# 14: there the products go by name.
    [Fact]
    public void An_FSharp_program_multiplies_by_name()
    {
        Consumer consumer = new Consumer(packages, "Functional", items: """<Compile Include="Program.fs" />""", language: "fs").With("""
            open Momentum.Frames
            open Momentum.Quantities
            open UnitsNet

            let h = MassMomentOfInertia.FromKilogramSquareMeters(12.0).Times(RotationalSpeed.FromRadiansPerSecond 2.0)
            printfn "%O" h

            let velocity = Vector<Speed, Body>.FromSi(1.0, 2.0, 3.0)
            let momentum: Vector<LinearMomentum, Body> = velocity.Times(Mass.FromKilograms 2.0)
            printfn "%O" (momentum.DividedBy(Duration.FromSeconds 2.0))
            printfn "%O" (Vector<Length, Body>.FromSi(0.0, 2.0, 0.0).Cross(Vector<Force, Body>.FromSi(3.0, 0.0, 0.0)))
            """);
        Assert.Equal("24 kg·m²/s\n(1, 2, 3) N [Body]\n(0, 0, -6) N·m [Body]\n", consumer.BuildsAndRuns());
    }

    [Fact]
    public void A_native_program_publishes_and_runs_and_no_warning_is_about_the_library()
    {
        // The whole library is kept, so that every member is examined and not only what the program calls.
        Consumer consumer = new Consumer(
            packages,
            "Native",
            "<PublishAot>true</PublishAot><TreatWarningsAsErrors>false</TreatWarningsAsErrors><TrimmerSingleWarn>true</TrimmerSingleWarn>",
            """<TrimmerRootAssembly Include="Momentum" />""").With(Program);
        (string output, string folder) = consumer.Publishes();
        Assert.All(Warnings().Matches(output), warning => Assert.Matches("warning IL(2104|3053): Assembly '(UnitsNet|MathNet\\.Numerics)' produced", warning.Value));

        (int exit, string printed) = DotNet.Run(folder, Path.Combine(folder, OperatingSystem.IsWindows() ? "Native.exe" : "Native"));
        Assert.Equal((0, Printed), (exit, printed));
        Assert.DoesNotContain(Directory.EnumerateFiles(folder), file => file.EndsWith(".dll", StringComparison.Ordinal));
    }

    [GeneratedRegex("warning .*")]
    private static partial Regex Warnings();
}
