using System.Runtime.CompilerServices;
using UnitsNet;

namespace Momentum.Quantities;

/// <summary>
/// The physical products of vectors, one line each: the whole list of what may be multiplied by what. Both factors are in
/// one frame, and so is the result. What is not here does not compile.
/// </summary>
public static class VectorProducts
{
    /// <summary>Products of a vector of Speed.</summary>
    extension<TFrame>(Vector<Speed, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Linear momentum: mass times velocity.</summary>
        public static Vector<LinearMomentum, TFrame> operator *(Vector<Speed, TFrame> left, Mass right) => Scale<Speed, LinearMomentum, TFrame>(left, right.ToSi());

        /// <summary>Linear momentum: mass times velocity.</summary>
        public static Vector<LinearMomentum, TFrame> operator *(Mass left, Vector<Speed, TFrame> right) => Scale<Speed, LinearMomentum, TFrame>(right, left.ToSi());

        /// <summary>Displacement: velocity times time.</summary>
        public static Vector<Length, TFrame> operator *(Vector<Speed, TFrame> left, Duration right) => Scale<Speed, Length, TFrame>(left, right.Seconds);

        /// <summary>Displacement: velocity times time.</summary>
        public static Vector<Length, TFrame> operator *(Duration left, Vector<Speed, TFrame> right) => Scale<Speed, Length, TFrame>(right, left.Seconds);

        /// <summary>Mean acceleration: change of velocity by time.</summary>
        public static Vector<Acceleration, TFrame> operator /(Vector<Speed, TFrame> left, Duration right) => Divide<Speed, Acceleration, TFrame>(left, right.Seconds);
    }

    /// <summary>Products of a vector of Acceleration.</summary>
    extension<TFrame>(Vector<Acceleration, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Force: mass times acceleration.</summary>
        public static Vector<Force, TFrame> operator *(Vector<Acceleration, TFrame> left, Mass right) => Scale<Acceleration, Force, TFrame>(left, right.ToSi());

        /// <summary>Force: mass times acceleration.</summary>
        public static Vector<Force, TFrame> operator *(Mass left, Vector<Acceleration, TFrame> right) => Scale<Acceleration, Force, TFrame>(right, left.ToSi());

        /// <summary>Change of velocity: acceleration times time.</summary>
        public static Vector<Speed, TFrame> operator *(Vector<Acceleration, TFrame> left, Duration right) => Scale<Acceleration, Speed, TFrame>(left, right.Seconds);

        /// <summary>Change of velocity: acceleration times time.</summary>
        public static Vector<Speed, TFrame> operator *(Duration left, Vector<Acceleration, TFrame> right) => Scale<Acceleration, Speed, TFrame>(right, left.Seconds);
    }

    /// <summary>Products of a vector of RotationalAcceleration.</summary>
    extension<TFrame>(Vector<RotationalAcceleration, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Change of angular velocity: angular acceleration times time.</summary>
        public static Vector<RotationalSpeed, TFrame> operator *(Vector<RotationalAcceleration, TFrame> left, Duration right) => Scale<RotationalAcceleration, RotationalSpeed, TFrame>(left, right.Seconds);

        /// <summary>Change of angular velocity: angular acceleration times time.</summary>
        public static Vector<RotationalSpeed, TFrame> operator *(Duration left, Vector<RotationalAcceleration, TFrame> right) => Scale<RotationalAcceleration, RotationalSpeed, TFrame>(right, left.Seconds);

        /// <summary>Tangential acceleration of a point of a turning body.</summary>
        public Vector<Acceleration, TFrame> Cross(Vector<Length, TFrame> other) => Cross<RotationalAcceleration, Length, Acceleration, TFrame>(vector, other);
    }

    /// <summary>Products of a vector of Force.</summary>
    extension<TFrame>(Vector<Force, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Change of linear momentum: force times time.</summary>
        public static Vector<LinearMomentum, TFrame> operator *(Vector<Force, TFrame> left, Duration right) => Scale<Force, LinearMomentum, TFrame>(left, right.Seconds);

        /// <summary>Change of linear momentum: force times time.</summary>
        public static Vector<LinearMomentum, TFrame> operator *(Duration left, Vector<Force, TFrame> right) => Scale<Force, LinearMomentum, TFrame>(right, left.Seconds);

        /// <summary>Acceleration of the centre of mass: force by mass.</summary>
        public static Vector<Acceleration, TFrame> operator /(Vector<Force, TFrame> left, Mass right) => Divide<Force, Acceleration, TFrame>(left, right.ToSi());

        /// <summary>Work of a force along a displacement.</summary>
        public Energy Dot(Vector<Length, TFrame> other) => Energy.FromJoules(Dot<Force, Length, TFrame>(vector, other));

        /// <summary>Power of a force on a moving point.</summary>
        public Power Dot(Vector<Speed, TFrame> other) => Power.FromWatts(Dot<Force, Speed, TFrame>(vector, other));
    }

    /// <summary>Products of a vector of Torque.</summary>
    extension<TFrame>(Vector<Torque, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Change of angular momentum: torque times time, both about the same point.</summary>
        public static Vector<AngularMomentum, TFrame> operator *(Vector<Torque, TFrame> left, Duration right) => Scale<Torque, AngularMomentum, TFrame>(left, right.Seconds);

        /// <summary>Change of angular momentum: torque times time, both about the same point.</summary>
        public static Vector<AngularMomentum, TFrame> operator *(Duration left, Vector<Torque, TFrame> right) => Scale<Torque, AngularMomentum, TFrame>(right, left.Seconds);

        /// <summary>Power of a torque on a turning body.</summary>
        public Power Dot(Vector<RotationalSpeed, TFrame> other) => Power.FromWatts(Dot<Torque, RotationalSpeed, TFrame>(vector, other));
    }

    /// <summary>Products of a vector of LinearMomentum.</summary>
    extension<TFrame>(Vector<LinearMomentum, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Velocity of the centre of mass: linear momentum by mass.</summary>
        public static Vector<Speed, TFrame> operator /(Vector<LinearMomentum, TFrame> left, Mass right) => Divide<LinearMomentum, Speed, TFrame>(left, right.ToSi());

        /// <summary>Mean force: change of linear momentum by time.</summary>
        public static Vector<Force, TFrame> operator /(Vector<LinearMomentum, TFrame> left, Duration right) => Divide<LinearMomentum, Force, TFrame>(left, right.Seconds);

        /// <summary>Twice the kinetic energy of translation.</summary>
        public Energy Dot(Vector<Speed, TFrame> other) => Energy.FromJoules(Dot<LinearMomentum, Speed, TFrame>(vector, other));
    }

    /// <summary>Products of a vector of Length.</summary>
    extension<TFrame>(Vector<Length, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Mean velocity: displacement by time.</summary>
        public static Vector<Speed, TFrame> operator /(Vector<Length, TFrame> left, Duration right) => Divide<Length, Speed, TFrame>(left, right.Seconds);

        /// <summary>Torque about the point that the displacement starts at.</summary>
        public Vector<Torque, TFrame> Cross(Vector<Force, TFrame> other) => Cross<Length, Force, Torque, TFrame>(vector, other);

        /// <summary>Angular momentum about the point that the displacement starts at.</summary>
        public Vector<AngularMomentum, TFrame> Cross(Vector<LinearMomentum, TFrame> other) => Cross<Length, LinearMomentum, AngularMomentum, TFrame>(vector, other);
    }

    /// <summary>Products of a vector of RotationalSpeed.</summary>
    extension<TFrame>(Vector<RotationalSpeed, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Mean angular acceleration: change of angular velocity by time.</summary>
        public static Vector<RotationalAcceleration, TFrame> operator /(Vector<RotationalSpeed, TFrame> left, Duration right) => Divide<RotationalSpeed, RotationalAcceleration, TFrame>(left, right.Seconds);

        /// <summary>Velocity of a point of a turning body, relative to the point that the displacement starts at.</summary>
        public Vector<Speed, TFrame> Cross(Vector<Length, TFrame> other) => Cross<RotationalSpeed, Length, Speed, TFrame>(vector, other);

        /// <summary>Acceleration from turning a velocity (half the Coriolis term).</summary>
        public Vector<Acceleration, TFrame> Cross(Vector<Speed, TFrame> other) => Cross<RotationalSpeed, Speed, Acceleration, TFrame>(vector, other);

        /// <summary>Torque that turns the angular momentum at this rate (the gyroscopic term of Euler's equation).</summary>
        public Vector<Torque, TFrame> Cross(Vector<AngularMomentum, TFrame> other) => Cross<RotationalSpeed, AngularMomentum, Torque, TFrame>(vector, other);
    }

    /// <summary>Products of a vector of AngularMomentum.</summary>
    extension<TFrame>(Vector<AngularMomentum, TFrame> vector)
        where TFrame : struct, IFrame
    {
        /// <summary>Mean torque: change of angular momentum by time.</summary>
        public static Vector<Torque, TFrame> operator /(Vector<AngularMomentum, TFrame> left, Duration right) => Divide<AngularMomentum, Torque, TFrame>(left, right.Seconds);

        /// <summary>Twice the kinetic energy of rotation, with the angular momentum about the centre of mass.</summary>
        public Energy Dot(Vector<RotationalSpeed, TFrame> other) => Energy.FromJoules(Dot<AngularMomentum, RotationalSpeed, TFrame>(vector, other));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<TResult, TFrame> Scale<T, TResult, TFrame>(Vector<T, TFrame> vector, double factor)
        where T : struct
        where TResult : struct
        where TFrame : struct, IFrame =>
        new(vector.Si * factor);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<TResult, TFrame> Divide<T, TResult, TFrame>(Vector<T, TFrame> vector, double divisor)
        where T : struct
        where TResult : struct
        where TFrame : struct, IFrame =>
        new(vector.Si / divisor);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<TResult, TFrame> Cross<TA, TB, TResult, TFrame>(Vector<TA, TFrame> a, Vector<TB, TFrame> b)
        where TA : struct
        where TB : struct
        where TResult : struct
        where TFrame : struct, IFrame =>
        new(a.Si.Cross(b.Si));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Dot<TA, TB, TFrame>(Vector<TA, TFrame> a, Vector<TB, TFrame> b)
        where TA : struct
        where TB : struct
        where TFrame : struct, IFrame =>
        a.Si.Dot(b.Si);
}
