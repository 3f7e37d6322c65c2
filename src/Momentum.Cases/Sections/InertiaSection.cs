using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>A stated inertia tensor: its moments and products.</summary>
internal sealed record InertiaSection : Section
{
    [Key("Moment about x.", Example = "\"9.6 kg*m^2\"", InStarter = true, MoreThan = "0 kg*m^2")]
    public Stated<MassMomentOfInertia>? Xx { get; init; }

    [Key("Moment about y.", Example = "\"9.9 kg*m^2\"", InStarter = true, MoreThan = "0 kg*m^2")]
    public Stated<MassMomentOfInertia>? Yy { get; init; }

    [Key("Moment about z.", Example = "\"12.8 kg*m^2 +/- 1.5 %\"", InStarter = true, MoreThan = "0 kg*m^2")]
    public Stated<MassMomentOfInertia>? Zz { get; init; }

    [Key("Product xy, with the sign that product_sign says. Left out: zero.", Example = "\"0.03 kg*m^2\"", InStarter = true)]
    public Stated<MassMomentOfInertia>? Xy { get; init; }

    [Key("Product xz. Left out: zero.", Example = "\"-0.05 kg*m^2\"", InStarter = true)]
    public Stated<MassMomentOfInertia>? Xz { get; init; }

    [Key("Product yz. Left out: zero.", Example = "\"0.02 kg*m^2\"", InStarter = true)]
    public Stated<MassMomentOfInertia>? Yz { get; init; }
}
