using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>Quantities whose errors move together.</summary>
internal sealed record CorrelatedSection : Section
{
    [Key("The keys with their sections, two or more, each with a tolerance; of a list the place in brackets, from zero.", Example = "[\"vehicle.mass\", \"vehicle.inertia.zz\"]", Required = true)]
    public IReadOnlyList<string> Keys { get; init; } = [];

    [Key("Coefficient of correlation of any two of them: 1 where they move in step, negative where one grows as the other falls.", Example = "0.8", Required = true, AtLeast = "-1", AtMost = "1", NoTolerance = "it is a statement about errors and has none of its own")]
    public Stated<Ratio> Coefficient { get; init; } = null!;
}
