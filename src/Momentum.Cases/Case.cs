using Momentum.Cases.Keys;
using Momentum.Cases.Sections;
using Momentum.Tethers.Springs;

namespace Momentum.Cases;

/// <summary>A whole case: everything an engineer states about one de-spin. Immutable once read.</summary>
internal sealed record Case : Section
{
    /// <summary>The version of the file format that this program reads.</summary>
    public const int CurrentFormat = 1;

    [Key("Version of this file format.", Example = "1", Required = true, InStarter = true, AtLeast = "1", AtMost = "1")]
    public int Format { get; init; }

    [Key("What the case is about; printed at the head of every answer.", Example = "\"Invented example: Kestrel-Loom tumble stage\"", Required = true, InStarter = true)]
    public string Title { get; init; } = "";

    [Key("The spinning body without the de-spin weights and cords: a stated tensor here, or only spin_axis here and [[part]] below.", Required = true, InStarter = true)]
    public VehicleSection Vehicle { get; init; } = new();

    [Key("A solid the body is made of, in place of a stated tensor; one [[part]] header each.")]
    public IReadOnlyList<PartSection> Part { get; init; } = [];

    [Key("The motion before release.", Required = true, InStarter = true)]
    public SpinSection Spin { get; init; } = new();

    [Key("The weights and cords. Give exactly two of weight_mass, cord_length and final_rate: the third is solved for.", Required = true, InStarter = true)]
    public DespinSection Despin { get; init; } = new();

    [Key("What the result must satisfy; momentum exits with 1 if it does not.", InStarter = true)]
    public RequireSection? Require { get; init; }

    [Key("In how many cases the requirements must hold, and how many are drawn to show it.")]
    public SpreadSection? Spread { get; init; }

    [Key("Quantities whose errors move together; one [[correlated]] header for each group. Without it all errors are independent.")]
    public IReadOnlyList<CorrelatedSection> Correlated { get; init; } = [];

    [Key("The powered, spinning phase before release.", NotUsedYet = true)]
    public BurnSection? Burn { get; init; }

    [Key("The orbit, which decides where the departed weights go.", NotUsedYet = true)]
    public OrbitSection? Orbit { get; init; }

    [Key("A rig on a bearing instead of a vehicle in space: the whole motion is then computed with its friction, gravity, floor and walls.")]
    public BenchSection? Bench { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (Despin.FinalRate is { } final && final.Value.RadiansPerSecond >= Spin.Rate.Value.RadiansPerSecond)
        {
            findings.Error(
                Despin, nameof(DespinSection.FinalRate), $"it is not below the rate before release, {Spin.Rate.Text}: unwinding cords only take spin away",
                Despin.OnSprings ? "less than spin.rate" : "less than spin.rate, or negative for a reversed spin", $"Write for example {DespinSection.Wish(Despin.OnSprings)}.");
        }

        else if (Despin is { OnSprings: true, FinalRate: { } left } && left.Value / Spin.Rate.Value < SpringCordDesign.LeastSpinRatio)
        {
            findings.Error(
                Despin, nameof(DespinSection.FinalRate), "forgive_spin_up = true has no design for it: stretch can make up for a spin-up error only where spin is left, in the sense of the spin before release",
                FormattableString.Invariant($"with forgive_spin_up: at least {SpringCordDesign.LeastSpinRatio} of spin.rate, {SpringCordDesign.LeastSpinRatio * Spin.Rate.Value.RevolutionsPerMinute:G4} rpm, and below spin.rate"),
                $"Write for example {DespinSection.Wish(onSprings: true)}; or, for a complete de-spin, remove cord.forgive_spin_up: cords that do not stretch then forgive a spin-up error by themselves.");
        }

        if (Despin.LetGo.Rate is { } letGo && letGo.Value.RadiansPerSecond >= Spin.Rate.Value.RadiansPerSecond)
        {
            findings.Error(
                Despin.LetGo, nameof(LetGoSection.Rate), $"it is not below the rate before release, {Spin.Rate.Text}, so that the weights would never be let go",
                "less than spin.rate", "Write for example let_go = { rate = \"10 rpm\" }.");
        }

        bool hasParts = Part.Count > 0;
        string? stated = Vehicle.Inertia is not null ? nameof(VehicleSection.Inertia)
            : Vehicle.Mass is not null ? nameof(VehicleSection.Mass)
            : Vehicle.Centre is not null ? nameof(VehicleSection.Centre)
            : null;
        if (hasParts && stated is not null)
        {
            findings.Error(
                Vehicle, stated, "the body is given twice, as a stated tensor and as [[part]] tables",
                "either mass, centre and inertia in [vehicle], or [[part]] tables",
                "Remove mass, centre and inertia from [vehicle], or remove the [[part]] tables.");
        }
        else if (!hasParts && (Vehicle.Inertia is null || Vehicle.Mass is null))
        {
            string missing = Vehicle.Inertia is null ? nameof(VehicleSection.Inertia) : nameof(VehicleSection.Mass);
            findings.Error(
                Vehicle, missing, "it is missing and there are no [[part]] tables to compute it from",
                "mass and inertia in [vehicle], or [[part]] tables",
                Vehicle.Inertia is null
                    ? "Add to [vehicle] for example inertia = { xx = \"31.5 kg*m^2\", yy = \"32.1 kg*m^2\", zz = \"18.4 kg*m^2\" }."
                    : "Add to [vehicle] for example mass = \"182 kg\".");
        }
    }
}
