using Momentum.Frames;
using Momentum.Inertia;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The numbers of a spinning body.</summary>
internal static class BodyFigures
{
    /// <summary>Its figures, where its spin axis stands among the principal axes, and what each part adds.</summary>
    public static AnswerGroup Of(SpinningBody body, Length hubRadius) => new("", "Body",
    [
        .. Figures(body, hubRadius),
        .. Words(BodyJudge.Rank(body)) is { } rank ? (AnswerNode[])[new AnswerWord("spin_axis", "The spin axis is that of", rank)] : [],
        .. body.Parts.Count == 0 ? [] : (AnswerNode[])[new AnswerTable("parts", "Parts", [.. body.Parts.Select(Row)])],
    ]);

    private static List<AnswerFigure> Figures(SpinningBody body, Length hubRadius)
    {
        double gyration = Math.Sqrt(body.SpinInertia.KilogramSquareMeters / body.Mass.Kilograms);
        List<AnswerFigure> figures =
        [
            AnswerFigure.Si("body_mass_kg", "Mass of the body", body.Mass.Kilograms, "kg", "without weights and cords"),
            AnswerFigure.Si("spin_inertia_kg_m2", "Spin inertia", body.SpinInertia.KilogramSquareMeters, "kg·m²", "about the spin axis through the centre of mass, without weights and cords"),
            AnswerFigure.Si("radius_of_gyration_m", "Radius of gyration", gyration, "m", FormattableString.Invariant($"{gyration / hubRadius.Meters:G3} times the hub radius")),
            new("centre_of_mass_offset_m", "Centre of mass off the spin axis", body.CentreOffset.Meters, body.CentreOffset.Millimeters, "mm", "from the axis through the body origin"),
        ];
        if (body.Inertia is { } inertia)
        {
            PrincipalAxes<Body> principal = inertia.PrincipalAxes();
            Balance<Body> balance = body.Balance!;
            Angle tilt = balance.PrincipalAxisTilt;
            figures.AddRange(
            [
                AnswerFigure.Si("principal_moment_least_kg_m2", "Least principal moment", principal.Smallest.KilogramSquareMeters, "kg·m²"),
                AnswerFigure.Si("principal_moment_intermediate_kg_m2", "Intermediate principal moment", principal.Intermediate.KilogramSquareMeters, "kg·m²"),
                AnswerFigure.Si("principal_moment_largest_kg_m2", "Largest principal moment", principal.Largest.KilogramSquareMeters, "kg·m²", SpinsAbout(body)),
                AnswerFigure.Si("static_imbalance_kg_m", "Static imbalance", balance.Static.KilogramMeters, "kg·m", "mass times the offset of its centre"),
                AnswerFigure.Si("dynamic_imbalance_kg_m2", "Dynamic imbalance", balance.Dynamic.KilogramSquareMeters, "kg·m²", "products of inertia with the spin axis, about the centre of mass"),
                new("principal_axis_tilt_rad", "Tilt of the nearest principal axis", tilt.Radians, tilt.Degrees, "deg", "from the spin axis"),
            ]);
        }

        return figures;
    }

    private static AnswerGroup Row(PartContribution<Body> part) => AnswerTable.Row(
        new AnswerWord("name", "Part", part.Name) { Shown = part.Name },
        new AnswerWord("shape", "Shape", part.Shape),
        new AnswerWord("mass_is", "Mass is", part.IsSubtracted ? "subtracted" : "added"),
        AnswerFigure.Si("mass_kg", "Mass", part.BasicMass.Kilograms, "kg"),
        new AnswerFigure("growth", "Growth", part.Growth.DecimalFractions, part.Growth.Percent, "%"),
        AnswerFigure.Si("mass_with_growth_kg", "Counted", part.PredictedMass.Kilograms, "kg"),
        Place("x", part.CentreOfMass.X),
        Place("y", part.CentreOfMass.Y),
        Place("z", part.CentreOfMass.Z));

    private static AnswerFigure Place(string axis, Length place) => new($"centre_{axis}_m", $"Centre {axis}", place.Meters, place.Millimeters, "mm");

    private static string? Words(SpinAxisRank? rank) => rank switch
    {
        SpinAxisRank.Largest => "largest inertia",
        SpinAxisRank.Least => "least inertia",
        SpinAxisRank.Intermediate => "intermediate inertia",
        SpinAxisRank.NoDifference => "all moments alike",
        _ => null,
    };

    private static string SpinsAbout(SpinningBody body) => BodyJudge.Rank(body) switch
    {
        SpinAxisRank.Largest => "it spins about this one",
        SpinAxisRank.Least => "it spins about the least",
        SpinAxisRank.Intermediate => "it spins about the intermediate",
        _ => "all are alike",
    };
}
