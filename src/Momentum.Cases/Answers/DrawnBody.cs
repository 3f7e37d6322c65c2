using Momentum.Cases.Quantities;
using Momentum.Cases.Sections;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The body of a drawn case: where the drawn figures belong to no body together, the nearest that can exist.</summary>
internal static class DrawnBody
{
    /// <summary>Mass properties; made about the point that the case states.</summary>
    /// <param name="drawn">The case.</param>
    /// <param name="meshes">The meshes of its parts, where they have one.</param>
    /// <exception cref="ArgumentException">What was drawn makes no body.</exception>
    /// <exception cref="ComputationRefusedException">The parts that were drawn make no body.</exception>
    public static MassProperties<Body> Of(Case drawn, IReadOnlyList<TriangleMesh?> meshes)
    {
        if (drawn.Part.Count > 0)
        {
            return PartsBody.Joined(drawn.Part, meshes).Build();
        }

        VehicleSection vehicle = drawn.Vehicle;
        InertiaSection stated = vehicle.Inertia!;
        Position<Body> centre = vehicle.Centre is [var x, var y, var z] ? Position<Body>.Of(x.Value, y.Value, z.Value) : Position<Body>.Origin;
        MassMomentOfInertia xy = Product(stated.Xy);
        MassMomentOfInertia xz = Product(stated.Xz);
        MassMomentOfInertia yz = Product(stated.Yz);
        Momentum.Inertia.ProductSign sign = BodyJudge.SignOf(vehicle);
        return vehicle.InertiaAbout == InertiaReference.CentreOfMass
            ? MassProperties<Body>.Of(vehicle.Mass!.Value, centre, InertiaTensor<Body>.Nearest(stated.Xx!.Value, stated.Yy!.Value, stated.Zz!.Value, xy, xz, yz, sign))
            : MassProperties<Body>.Nearest(
                vehicle.Mass!.Value, centre, PointInertia<Body>.Nearest(Position<Body>.Origin, stated.Xx!.Value, stated.Yy!.Value, stated.Zz!.Value, xy, xz, yz, sign));
    }

    /// <summary>The spin inertia where only it is stated.</summary>
    /// <exception cref="ArgumentException">What was drawn leaves none about the centre of mass.</exception>
    public static MassMomentOfInertia SpinInertia(Case drawn, Direction<Body> axis)
    {
        VehicleSection vehicle = drawn.Vehicle;
        InertiaSection stated = vehicle.Inertia!;
        MassMomentOfInertia moment = (stated.Xx ?? stated.Yy ?? stated.Zz)!.Value;
        if (vehicle.InertiaAbout == InertiaReference.CentreOfMass)
        {
            return moment;
        }

        Position<Body> centre = vehicle.Centre is [var x, var y, var z] ? Position<Body>.Of(x.Value, y.Value, z.Value) : Position<Body>.Origin;
        var body = new SpinningBody(vehicle.Mass!.Value, centre, axis, moment, null);
        double about = moment.KilogramSquareMeters - (body.Mass.Kilograms * Math.Pow(body.CentreOffset.Meters, 2));
        return about > 0
            ? MassMomentOfInertia.FromKilogramSquareMeters(about)
            : throw new ArgumentException("Moved from the origin to the centre of mass the drawn moment is not positive.");
    }

    /// <summary>The six elements as drawn before they are made a body, kg·m²: xx, yy, zz, xy, xz, yz, tensor elements.</summary>
    public static double[] ElementsAsStated(Case drawn)
    {
        InertiaSection stated = drawn.Vehicle.Inertia!;
        double sign = BodyJudge.SignOf(drawn.Vehicle) == Momentum.Inertia.ProductSign.TensorElement ? 1 : -1;
        return
        [
            stated.Xx!.Value.KilogramSquareMeters, stated.Yy!.Value.KilogramSquareMeters, stated.Zz!.Value.KilogramSquareMeters,
            sign * Product(stated.Xy).KilogramSquareMeters, sign * Product(stated.Xz).KilogramSquareMeters, sign * Product(stated.Yz).KilogramSquareMeters,
        ];
    }

    /// <summary>The same of the body that was made, about the point that the case states.</summary>
    public static double[] ElementsOf(Case drawn, MassProperties<Body> body)
    {
        PointInertia<Body> about = body.InertiaAbout(drawn.Vehicle.InertiaAbout == InertiaReference.CentreOfMass ? body.CentreOfMass : Position<Body>.Origin);
        return
        [
            about.Xx.KilogramSquareMeters, about.Yy.KilogramSquareMeters, about.Zz.KilogramSquareMeters,
            about.Xy.KilogramSquareMeters, about.Xz.KilogramSquareMeters, about.Yz.KilogramSquareMeters,
        ];
    }

    private static MassMomentOfInertia Product(Stated<MassMomentOfInertia>? product) => product?.Value ?? MassMomentOfInertia.Zero;
}
