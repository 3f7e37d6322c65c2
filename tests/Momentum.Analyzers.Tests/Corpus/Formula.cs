namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>A law of mechanics: a result and the product that gives it.</summary>
/// <param name="Result">The quantity that comes out.</param>
/// <param name="Write">Writes the product of the factors' texts.</param>
/// <param name="Factors">The factors' quantities.</param>
/// <param name="Powers">To which power each factor stands.</param>
internal sealed record Formula(string Result, Func<string[], string> Write, string[] Factors, double[] Powers)
{
    // Beer and Johnston's inside cover, from memory; each line is also checked by dimension when a snippet is generated.
    internal static IReadOnlyList<Formula> All { get; } =
    [
        new("Energy", f => $"0.5 * {f[0]} * {f[1]} * {f[1]}", ["MassMomentOfInertia", "RotationalSpeed"], [1, 2]),
        new("Energy", f => $"0.5 * {f[0]} * Math.Pow({f[1]}, 2)", ["Mass", "Speed"], [1, 2]),
        new("Speed", f => $"{f[0]} * {f[1]}", ["Length", "RotationalSpeed"], [1, 1]),
        new("Acceleration", f => $"{f[0]} * {f[1]} * {f[1]}", ["Length", "RotationalSpeed"], [1, 2]),
        new("Force", f => $"{f[0]} * {f[1]} * {f[2]} * {f[2]}", ["Mass", "Length", "RotationalSpeed"], [1, 1, 2]),
        new("Force", f => $"{f[0]} * {f[1]}", ["Mass", "Acceleration"], [1, 1]),
        new("Torque", f => $"{f[0]} * {f[1]}", ["Force", "Length"], [1, 1]),
        new("Torque", f => $"{f[0]} * {f[1]}", ["MassMomentOfInertia", "RotationalAcceleration"], [1, 1]),
        new("Power", f => $"{f[0]} * {f[1]}", ["Torque", "RotationalSpeed"], [1, 1]),
        new("Power", f => $"{f[0]} * {f[1]}", ["Force", "Speed"], [1, 1]),
        new("Energy", f => $"{f[0]} * {f[1]}", ["Torque", "Angle"], [1, 1]),
        new("Energy", f => $"{f[0]} * {f[1]}", ["Force", "Length"], [1, 1]),
        new("Length", f => $"{f[0]} * {f[1]}", ["Speed", "Duration"], [1, 1]),
        new("Speed", f => $"{f[0]} * {f[1]}", ["Acceleration", "Duration"], [1, 1]),
        new("RotationalSpeed", f => $"{f[0]} * {f[1]}", ["RotationalAcceleration", "Duration"], [1, 1]),
        new("Angle", f => $"{f[0]} * {f[1]}", ["RotationalSpeed", "Duration"], [1, 1]),
        new("RotationalSpeed", f => $"{f[0]} / {f[1]}", ["Angle", "Duration"], [1, -1]),
        new("Speed", f => $"{f[0]} / {f[1]}", ["Length", "Duration"], [1, -1]),
        new("Length", f => $"{f[0]} * {f[1]}", ["Length", "Angle"], [1, 1]),
        new("Impulse", f => $"{f[0]} * {f[1]}", ["Force", "Duration"], [1, 1]),
        new("Mass", f => $"{f[0]} * {f[1]}", ["LinearDensity", "Length"], [1, 1]),
        new("Mass", f => $"{f[0]} * {f[1]}", ["Density", "Volume"], [1, 1]),
        new("Pressure", f => $"{f[0]} / {f[1]}", ["Force", "Area"], [1, -1]),
        new("Force", f => $"{f[0]} * {f[1]}", ["Pressure", "Area"], [1, 1]),
        new("Force", f => $"{f[0]} * {f[1]}", ["ForcePerLength", "Length"], [1, 1]),
        new("Energy", f => $"0.5 * {f[0]} * {f[1]} * {f[1]}", ["ForcePerLength", "Length"], [1, 2]),
        new("Torque", f => $"{f[0]} * {f[1]}", ["RotationalStiffness", "Angle"], [1, 1]),
        new("Area", f => $"Math.PI * {f[0]} * {f[0]}", ["Length"], [2]),
        new("MassMomentOfInertia", f => $"0.5 * {f[0]} * {f[1]} * {f[1]}", ["Mass", "Length"], [1, 2]),
        new("MassMomentOfInertia", f => $"{f[0]} * {f[1]} * {f[1]} / 12", ["Mass", "Length"], [1, 2]),
        new("Length", f => $"0.5 * {f[0]} * {f[1]} * {f[1]}", ["Acceleration", "Duration"], [1, 2]),
        new("Length", f => $"Math.Sqrt({f[0]} / {f[1]})", ["MassMomentOfInertia", "Mass"], [0.5, -0.5]),
        new("RotationalSpeed", f => $"Math.Sqrt({f[0]} / ({f[1]} * {f[2]}))", ["Force", "Mass", "Length"], [0.5, -0.5, -0.5]),
        new("Speed", f => $"Math.Sqrt(2 * {f[0]} / {f[1]})", ["Energy", "Mass"], [0.5, -0.5]),
        new("Duration", f => $"{f[0]} / {f[1]}", ["Length", "Speed"], [1, -1]),
        new("RotationalSpeed", f => $"{f[0]} / {f[1]}", ["Speed", "Length"], [1, -1]),
        new("Acceleration", f => $"{f[0]} / {f[1]}", ["Force", "Mass"], [1, -1]),
        new("RotationalAcceleration", f => $"{f[0]} / {f[1]}", ["Torque", "MassMomentOfInertia"], [1, -1]),
        new("Duration", f => $"{f[0]} / {f[1]}", ["Impulse", "Force"], [1, -1]),
        new("Volume", f => $"{f[0]} * {f[1]}", ["Area", "Length"], [1, 1]),
    ];

    /// <summary>The SI size of the product when the factors are in these units.</summary>
    internal double Size(IReadOnlyList<Measure> factors) => factors.Select((f, i) => Math.Pow(f.Size, Powers[i])).Aggregate(1.0, (a, b) => a * b);
}
