using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The spinning body without de-spin weights and cords.</summary>
internal sealed record VehicleSection : Section
{
    [Key("Mass of the body without the de-spin weights and cords.", Example = "\"96 kg +/- 0.5 %\"", InStarter = true, MoreThan = "0 kg")]
    public Stated<Mass>? Mass { get; init; }

    [Key("Centre of mass from the body origin: x, y, z. Left out: at the origin.", Example = "[\"0 mm\", \"0 mm\", \"305 mm\"]", InStarter = true)]
    public IReadOnlyList<Stated<Length>>? Centre { get; init; }

    [Key("The inertia tensor, without the de-spin weights and cords.", InStarter = true)]
    public InertiaSection? Inertia { get; init; }

    [Key("The point about which the inertia is stated. Needed as soon as an inertia is stated.", Example = "\"centre of mass\"", InStarter = true)]
    public InertiaReference? InertiaAbout { get; init; }

    [Key("What a stated product of inertia means: \"tensor element\", the off-diagonal element I_xy = -∫xy dm, or \"positive integral\", I_xy = +∫xy dm. Needed as soon as a product is stated.", Example = "\"tensor element\"", InStarter = true)]
    public ProductSign? ProductSign { get; init; }

    [Key("The body axis about which it spins. The spin inertia is taken about this axis through the centre of mass.", Example = "\"z\"", Required = true, InStarter = true)]
    public Axis SpinAxis { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (Inertia is null)
        {
            return;
        }

        if (InertiaAbout is null)
        {
            findings.Error(
                this, nameof(InertiaAbout), "it is missing: an inertia means nothing without the point it is taken about",
                "\"centre of mass\" or \"origin\"", "Add to [vehicle] for example inertia_about = \"centre of mass\".");
        }

        if (ProductSign is null && (Inertia.Xy ?? Inertia.Xz ?? Inertia.Yz) is not null)
        {
            findings.Error(
                this, nameof(ProductSign), "it is missing: both signs of a product of inertia are in use, and they give different bodies",
                "\"tensor element\" (I_xy = -∫xy dm) or \"positive integral\" (I_xy = +∫xy dm)",
                "Add to [vehicle] for example product_sign = \"tensor element\".");
        }

        (string spun, Stated<MassMomentOfInertia>? moment) = SpinAxis switch
        {
            Axis.X => (nameof(InertiaSection.Xx), Inertia.Xx),
            Axis.Y => (nameof(InertiaSection.Yy), Inertia.Yy),
            _ => (nameof(InertiaSection.Zz), Inertia.Zz),
        };
        int moments = new[] { Inertia.Xx, Inertia.Yy, Inertia.Zz }.Count(m => m is not null);
        if (moment is null)
        {
            findings.Error(
                Inertia, spun, "it is missing, and it is the moment about the spin axis",
                "the moment about the spin axis alone, or all three moments",
                $"Add to vehicle.inertia for example {KeyDescription.SpellingOf(spun)} = \"18.4 kg*m^2\".");
        }
        else if (moments == 2)
        {
            findings.Error(
                Inertia, null, "one of the three moments is missing",
                "the moment about the spin axis alone, or all three moments", "Add the third moment, or leave out both transverse ones.");
        }
        else if (moments == 1 && (Inertia.Xy ?? Inertia.Xz ?? Inertia.Yz) is not null)
        {
            findings.Error(
                Inertia, null, "products of inertia need all three moments beside them",
                "the moment about the spin axis alone, or all three moments with their products", "Add the other two moments, or remove the products.");
        }
    }
}
