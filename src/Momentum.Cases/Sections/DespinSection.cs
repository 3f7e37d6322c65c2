using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The weights and cords.</summary>
internal sealed record DespinSection : Section
{
    [Key("Radius from the spin axis to the centreline of the wound cord.", Example = "\"380 mm +/- 0.3 mm\"", Required = true, InStarter = true, MoreThan = "0 mm", OfEachCord = true)]
    public Stated<Length> HubRadius { get; init; } = null!;

    [Key("Number of weights, each on its own cord, evenly spaced and released together.", Example = "2", Required = true, InStarter = true, AtLeast = "2", AtMost = "8")]
    public int Weights { get; init; }

    [Key("Mass of each weight.", Example = "\"0.55 kg +/- 1 g\"", InStarter = true, MoreThan = "0 kg", OfEachCord = true)]
    public Stated<Mass>? WeightMass { get; init; }

    [Key("Length of each cord, from its end point on the hub to the centre of mass of its weight.", Example = "\"1.5 m\"", MoreThan = "0 m", OfEachCord = true)]
    public Stated<Length>? CordLength { get; init; }

    [Key("Spin rate wanted afterwards; negative turns the other way.", Example = "\"0 rpm\"", InStarter = true, NoTolerance = "it is what the design aims at; what may become of it belongs under [require]")]
    public Stated<RotationalSpeed>? FinalRate { get; init; }

    [Key("When a cord lets go of the hub: \"tangent\", the moment its cord is fully unwound; \"radial\", when it has hinged on to point straight out; a cord angle from the tangent; or a spin rate.", Example = "\"radial\"", Required = true, InStarter = true)]
    public LetGoSection LetGo { get; init; } = null!;

    [Key("Error of the cord angle at let-go, about zero: one standard deviation, or with the forms of a tolerance, such as \"9 deg 3 sigma\", \"5 deg max\" or \"3 deg each\".", Example = "\"4 deg\"", MoreThan = "0 deg", AtMost = "90 deg", OfEachCord = true, IsScatter = true)]
    public Stated<Angle>? LetGoError { get; init; }

    [Key("Delay of one weight's let-go after the others', whichever it is: one standard deviation, or with the forms of a tolerance.", Example = "\"2 ms\"", MoreThan = "0 s", IsScatter = true)]
    public Stated<Duration>? SecondWeightDelay { get; init; }

    [Key("Height of the cord plane above the centre of mass, along the spin axis.", Example = "\"15 mm\"", Was = "deck_offset")]
    public Stated<Length>? CordPlaneOffset { get; init; }

    [Key("The edge of a deck that a wobbling body's cords may touch, which is then looked for.")]
    public DeckEdgeSection? DeckEdge { get; init; }

    [Key("The cords. Left out: without mass, and no safety factor is computed.", InStarter = true)]
    public CordSection? Cord { get; init; }

    /// <summary>Whether the cords are sized as springs.</summary>
    public bool OnSprings => Cord is { ForgiveSpinUp: true };

    /// <summary>A wish for the final rate, as an example: spring cords have none for a complete de-spin.</summary>
    public static string Wish(bool onSprings) => onSprings ? "final_rate = \"10 rpm\"" : "final_rate = \"0 rpm\"";

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (DeckEdge is { } edge && edge.Radius.Value < HubRadius.Value)
        {
            findings.Error(
                edge, nameof(DeckEdgeSection.Radius), "it lies within the hub radius, where the cords are wound",
                FormattableString.Invariant($"at least the hub radius, {HubRadius.Value.Meters:G4} m"), "Give the radius of the edge, not its diameter or its distance from the hub.");
        }

        if (LetGo.Rate is not null && LetGoError is not null)
        {
            findings.Error(
                this, nameof(LetGoError), "a let-go at a spin rate has no cord angle to be missed",
                "with a let-go rate: a tolerance on that rate, or second_weight_delay", "Remove let_go_error, and write for example let_go = { rate = \"10 rpm +/- 0.5 rpm each\" }.");
        }

        if (LetGoError is not null && LetGo.Angle is { Tolerance.IsNone: false })
        {
            findings.Error(
                this, nameof(LetGoError), "let_go has a tolerance already", "let_go_error or a tolerance behind the angle", "Remove one of the two.");
        }

        if (OnSprings && LetGo.Rate is not null)
        {
            findings.Error(
                this, nameof(LetGo), "a let-go rate fixes the spin rate afterwards, so that there is nothing for forgive_spin_up = true to forgive",
                "with forgive_spin_up: \"tangent\", \"radial\" or { angle = … }", "Let go at \"tangent\", \"radial\" or an angle, or remove cord.forgive_spin_up.");
            return;
        }

        if (OnSprings && FinalRate is null && WeightMass is not null && CordLength is not null)
        {
            findings.Error(
                this, nameof(FinalRate), "it is missing, and forgive_spin_up = true solves for the stiffness and one of weight_mass and cord_length from it",
                "with forgive_spin_up: final_rate and one of weight_mass and cord_length", $"Add for example {Wish(OnSprings)} and remove cord_length, or remove cord.forgive_spin_up.");
            return;
        }

        if (LetGo.Rate is not null)
        {
            if (FinalRate is not null)
            {
                findings.Error(
                    this, nameof(FinalRate), "let_go = { rate = … } fixes the spin rate afterwards, so that it cannot be asked for again",
                    "with a let-go rate: weight_mass and cord_length", "Remove final_rate, or let go at \"tangent\", \"radial\" or an angle.");
            }
            else if (WeightMass is null || CordLength is null)
            {
                findings.Error(
                    this, nameof(LetGo), "a let-go rate fixes the spin rate afterwards whatever the weights and cords, so that neither follows from it",
                    "with a let-go rate: weight_mass and cord_length", "Give both weight_mass and cord_length, or let go at \"tangent\", \"radial\" or an angle.");
            }

            return;
        }

        const string Rule = "exactly two of weight_mass, cord_length and final_rate; the third is solved for";
        string[] given = [.. new (string Name, object? Value)[] { (nameof(WeightMass), WeightMass), (nameof(CordLength), CordLength), (nameof(FinalRate), FinalRate) }
            .Where(k => k.Value is not null).Select(k => k.Name)];
        if (given.Length == 3)
        {
            findings.Error(this, nameof(CordLength), "weight_mass, cord_length and final_rate are all given, so that nothing is left to solve for and they may contradict one another", Rule, "Remove the one you want computed; state it under [require] if it is a limit.");
        }
        else if (given.Length < 2)
        {
            string known = given.Length == 0 ? "none of weight_mass, cord_length and final_rate is given" : $"of weight_mass, cord_length and final_rate only {KeyDescription.SpellingOf(given[0])} is given";
            findings.Error(this, null, known, Rule, given.Contains(nameof(FinalRate)) ? "Add for example weight_mass = \"0.55 kg\"." : $"Add for example {Wish(OnSprings)} and weight_mass = \"0.55 kg\".");
        }
    }
}
