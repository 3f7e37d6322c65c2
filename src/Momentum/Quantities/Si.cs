using System.Runtime.CompilerServices;
using UnitsNet;

namespace Momentum.Quantities;

/// <summary>
/// The bridge between a scalar quantity and its SI number: the one table of the quantities a vector may have.
/// </summary>
/// <remarks>
/// The comparisons of types are constants once the generic type is compiled, so that each method is one conversion with
/// neither branch nor box.
/// </remarks>
internal static class Si<TQuantity>
    where TQuantity : struct
{
    /// <summary>The SI unit's symbol, for text.</summary>
    internal static string Symbol =>
        typeof(TQuantity) == typeof(Length) ? "m" :
        typeof(TQuantity) == typeof(Speed) ? "m/s" :
        typeof(TQuantity) == typeof(Acceleration) ? "m/s²" :
        typeof(TQuantity) == typeof(Force) ? "N" :
        typeof(TQuantity) == typeof(Torque) ? "N·m" :
        typeof(TQuantity) == typeof(RotationalSpeed) ? "rad/s" :
        typeof(TQuantity) == typeof(RotationalAcceleration) ? "rad/s²" :
        typeof(TQuantity) == typeof(LinearMomentum) ? "kg·m/s" :
        typeof(TQuantity) == typeof(AngularMomentum) ? "kg·m²/s" :
        throw NotAVectorQuantity();

    /// <summary>The SI number of a quantity.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Number(TQuantity quantity) =>
        typeof(TQuantity) == typeof(Length) ? As<Length>(quantity).Meters :
        typeof(TQuantity) == typeof(Speed) ? As<Speed>(quantity).MetersPerSecond :
        typeof(TQuantity) == typeof(Acceleration) ? As<Acceleration>(quantity).MetersPerSecondSquared :
        typeof(TQuantity) == typeof(Force) ? As<Force>(quantity).Newtons :
        typeof(TQuantity) == typeof(Torque) ? As<Torque>(quantity).NewtonMeters :
        typeof(TQuantity) == typeof(RotationalSpeed) ? As<RotationalSpeed>(quantity).ToSi() :
        typeof(TQuantity) == typeof(RotationalAcceleration) ? As<RotationalAcceleration>(quantity).RadiansPerSecondSquared :
        typeof(TQuantity) == typeof(LinearMomentum) ? As<LinearMomentum>(quantity).KilogramMetersPerSecond :
        typeof(TQuantity) == typeof(AngularMomentum) ? As<AngularMomentum>(quantity).KilogramSquareMetersPerSecond :
        throw NotAVectorQuantity();

    /// <summary>The quantity of an SI number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TQuantity Quantity(double si) =>
        typeof(TQuantity) == typeof(Length) ? To(Length.FromMeters(si)) :
        typeof(TQuantity) == typeof(Speed) ? To(Speed.FromMetersPerSecond(si)) :
        typeof(TQuantity) == typeof(Acceleration) ? To(Acceleration.FromMetersPerSecondSquared(si)) :
        typeof(TQuantity) == typeof(Force) ? To(Force.FromNewtons(si)) :
        typeof(TQuantity) == typeof(Torque) ? To(Torque.FromNewtonMeters(si)) :
        typeof(TQuantity) == typeof(RotationalSpeed) ? To(RotationalSpeed.FromRadiansPerSecond(si)) :
        typeof(TQuantity) == typeof(RotationalAcceleration) ? To(RotationalAcceleration.FromRadiansPerSecondSquared(si)) :
        typeof(TQuantity) == typeof(LinearMomentum) ? To(LinearMomentum.FromKilogramMetersPerSecond(si)) :
        typeof(TQuantity) == typeof(AngularMomentum) ? To(AngularMomentum.FromKilogramSquareMetersPerSecond(si)) :
        throw NotAVectorQuantity();

    private static T As<T>(TQuantity quantity) where T : struct => Unsafe.BitCast<TQuantity, T>(quantity);

    private static TQuantity To<T>(T quantity) where T : struct => Unsafe.BitCast<T, TQuantity>(quantity);

    private static NotSupportedException NotAVectorQuantity() => new(
        $"{typeof(TQuantity).Name} is not a quantity that a vector can have. Allowed: Length, Speed, Acceleration, Force, " +
        "Torque, RotationalSpeed, RotationalAcceleration, LinearMomentum, AngularMomentum.");
}
