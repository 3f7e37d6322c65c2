namespace Momentum.Tests.Compiling;

/// <summary>The values that the snippets work on. Those ending in Fixed are along inertial axes, the rest along body axes.</summary>
internal static class Given
{
    internal const string Source = """
        using Momentum.Frames;
        using Momentum.Inertia;
        using Momentum.Quantities;
        using UnitsNet;

        internal readonly struct Camera : IFrame;

        internal static class Given
        {
            internal static Mass mass;
            internal static Duration time;
            internal static Length length;
            internal static Speed speed;
            internal static Force push;
            internal static Torque twist;
            internal static Energy work;
            internal static Power power;
            internal static Angle angle;
            internal static Frequency frequency;
            internal static RotationalSpeed spin;
            internal static MassMomentOfInertia moment;
            internal static AngularMomentum spinMomentum;
            internal static LinearMomentum thrownMomentum;

            internal static Position<Body> point;
            internal static Position<Inertial> pointFixed;
            internal static Direction<Body> axis;
            internal static Direction<Inertial> axisFixed;
            internal static Vector<Length, Body> displacement;
            internal static Vector<Length, Inertial> displacementFixed;
            internal static Vector<Speed, Body> velocity;
            internal static Vector<Speed, Inertial> velocityFixed;
            internal static Vector<Acceleration, Body> acceleration;
            internal static Vector<Force, Body> force;
            internal static Vector<Force, Inertial> forceFixed;
            internal static Vector<Torque, Body> torque;
            internal static Vector<Torque, Inertial> torqueFixed;
            internal static Vector<RotationalSpeed, Body> rate;
            internal static Vector<RotationalSpeed, Inertial> rateFixed;
            internal static Vector<RotationalAcceleration, Body> rateChange;
            internal static Vector<LinearMomentum, Body> momentum;
            internal static Vector<LinearMomentum, Inertial> momentumFixed;
            internal static Vector<AngularMomentum, Body> angularMomentum;
            internal static Vector<AngularMomentum, Inertial> angularMomentumFixed;

            internal static InertiaTensor<Body> inertia;
            internal static InertiaTensor<Inertial> inertiaFixed;
            internal static PointInertia<Body> inertiaAboutPoint;
            internal static PointInertia<Inertial> inertiaAboutPointFixed;
            internal static MassProperties<Body> body;
            internal static MassProperties<Inertial> bodyFixed;

            internal static Rotation<Body, Inertial> attitude;
            internal static Rotation<Inertial, Body> attitudeBack;
            internal static Rotation<Camera, Body> mount;
            internal static Vector<Speed, Camera> velocitySeen;

            internal static void TakesForce(Vector<Force, Body> force) { }
            internal static void TakesEnergy(Energy energy) { }
        }
        """;
}
