using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>What the result must satisfy.</summary>
internal sealed record RequireSection : Section
{
    [Key("Magnitude of the spin rate left after let-go: a limit, or a band such as \"6 to 18 rpm\".", Example = "\"< 2 rpm\"", InStarter = true, AllowsBand = true)]
    public Limit<RotationalSpeed>? FinalRate { get; init; }

    [Key("Nutation half-angle after let-go.", Example = "\"< 5 deg\"", Was = "wobble")]
    public Limit<Angle>? Nutation { get; init; }

    [Key("Rate across the spin axis after let-go, about any axis: what is left of the wobble when the spin is gone.", Example = "\"< 1 rpm\"")]
    public Limit<RotationalSpeed>? TransverseRate { get; init; }

    [Key("Safety factor of the cord: its breaking load over the greatest tension of one cord.", Example = "\"> 3\"", InStarter = true, Was = "cord_margin")]
    public Limit<Ratio>? CordSafetyFactor { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        Direction(nameof(FinalRate), FinalRate?.IsUpper, wantsUpper: true, "< 2 rpm");
        Direction(nameof(Nutation), Nutation?.IsUpper, wantsUpper: true, "< 5 deg");
        Direction(nameof(TransverseRate), TransverseRate?.IsUpper, wantsUpper: true, "< 1 rpm");
        Direction(nameof(CordSafetyFactor), CordSafetyFactor?.IsUpper, wantsUpper: false, "> 3");

        void Direction(string property, bool? isUpper, bool wantsUpper, string example)
        {
            if (isUpper is { } given && given != wantsUpper)
            {
                findings.Error(
                    this, property, wantsUpper ? "a lower limit on what should be small asks for the opposite" : "an upper limit on what should be large asks for the opposite",
                    wantsUpper ? "< or <= and a bound" : "> or >= and a bound", $"Write for example {KeyDescription.SpellingOf(property)} = \"{example}\".");
            }
        }
    }
}
