using UnitsNet;

namespace Momentum.Quantities;

/// <summary>
/// The products of scalars that rigid-body work needs and UnitsNet lacks, one line each. (UnitsNet has the rest: force
/// times length, mass times acceleration, rate times time.)
/// </summary>
public static class ScalarProducts
{
    /// <summary>Products of MassMomentOfInertia.</summary>
    extension(MassMomentOfInertia)
    {
        /// <summary>Angular momentum about the axis of the moment of inertia.</summary>
        public static AngularMomentum operator *(MassMomentOfInertia left, RotationalSpeed right) => AngularMomentum.FromKilogramSquareMetersPerSecond(left.ToSi() * right.ToSi());

        /// <summary>Angular momentum about the axis of the moment of inertia.</summary>
        public static AngularMomentum operator *(RotationalSpeed left, MassMomentOfInertia right) => AngularMomentum.FromKilogramSquareMetersPerSecond(right.ToSi() * left.ToSi());

        /// <summary>Torque about the axis of the moment of inertia.</summary>
        public static Torque operator *(MassMomentOfInertia left, RotationalAcceleration right) => Torque.FromNewtonMeters(left.ToSi() * right.RadiansPerSecondSquared);

        /// <summary>Torque about the axis of the moment of inertia.</summary>
        public static Torque operator *(RotationalAcceleration left, MassMomentOfInertia right) => Torque.FromNewtonMeters(right.ToSi() * left.RadiansPerSecondSquared);
    }

    /// <summary>Products of Torque.</summary>
    extension(Torque)
    {
        /// <summary>Change of angular momentum.</summary>
        public static AngularMomentum operator *(Torque left, Duration right) => AngularMomentum.FromKilogramSquareMetersPerSecond(left.NewtonMeters * right.Seconds);

        /// <summary>Change of angular momentum.</summary>
        public static AngularMomentum operator *(Duration left, Torque right) => AngularMomentum.FromKilogramSquareMetersPerSecond(right.NewtonMeters * left.Seconds);

        /// <summary>Power of a torque on a turning shaft.</summary>
        public static Power operator *(Torque left, RotationalSpeed right) => Power.FromWatts(left.NewtonMeters * right.ToSi());

        /// <summary>Power of a torque on a turning shaft.</summary>
        public static Power operator *(RotationalSpeed left, Torque right) => Power.FromWatts(right.NewtonMeters * left.ToSi());

        /// <summary>Angular acceleration about the axis of the moment of inertia.</summary>
        public static RotationalAcceleration operator /(Torque left, MassMomentOfInertia right) => RotationalAcceleration.FromRadiansPerSecondSquared(left.NewtonMeters / right.ToSi());
    }

    /// <summary>Products of RotationalSpeed.</summary>
    extension(RotationalSpeed)
    {
        /// <summary>Speed of a point at this distance from the axis.</summary>
        public static Speed operator *(RotationalSpeed left, Length right) => Speed.FromMetersPerSecond(left.ToSi() * right.Meters);

        /// <summary>Speed of a point at this distance from the axis.</summary>
        public static Speed operator *(Length left, RotationalSpeed right) => Speed.FromMetersPerSecond(right.ToSi() * left.Meters);
    }

    /// <summary>Products of Mass.</summary>
    extension(Mass)
    {
        /// <summary>Linear momentum.</summary>
        public static LinearMomentum operator *(Mass left, Speed right) => LinearMomentum.FromKilogramMetersPerSecond(left.ToSi() * right.MetersPerSecond);

        /// <summary>Linear momentum.</summary>
        public static LinearMomentum operator *(Speed left, Mass right) => LinearMomentum.FromKilogramMetersPerSecond(right.ToSi() * left.MetersPerSecond);
    }

    /// <summary>Products of AngularMomentum.</summary>
    extension(AngularMomentum)
    {
        /// <summary>Rate of turn about the axis of the moment of inertia.</summary>
        public static RotationalSpeed operator /(AngularMomentum left, MassMomentOfInertia right) => RotationalSpeed.FromRadiansPerSecond(left.KilogramSquareMetersPerSecond / right.ToSi());

        /// <summary>Moment of inertia that has this angular momentum at this rate.</summary>
        public static MassMomentOfInertia operator /(AngularMomentum left, RotationalSpeed right) => MassMomentOfInertia.FromKilogramSquareMeters(left.KilogramSquareMetersPerSecond / right.ToSi());

        /// <summary>Mean torque.</summary>
        public static Torque operator /(AngularMomentum left, Duration right) => Torque.FromNewtonMeters(left.KilogramSquareMetersPerSecond / right.Seconds);
    }

    /// <summary>Products of LinearMomentum.</summary>
    extension(LinearMomentum)
    {
        /// <summary>Speed of the centre of mass.</summary>
        public static Speed operator /(LinearMomentum left, Mass right) => Speed.FromMetersPerSecond(left.KilogramMetersPerSecond / right.ToSi());
    }
}
