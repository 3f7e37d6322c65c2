using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>The equations of <see cref="ForcedMotion{TBody, TLoads}"/> in SI numbers.</summary>
/// <remarks>
/// State: 0–2 position, 3–5 velocity of the centre of mass, 6–8 total angular momentum about it, all inertial; 9–12
/// quaternion from body to inertial axes, scalar last; 13–15 angular momentum of the slug, inertial; 16 work of the loads,
/// 17 energy dissipated, 18 energy carried away by the lost mass.
/// The body's rate comes from the momentum, so no derivative of the inertia enters the motion, only the energy account.
/// </remarks>
internal struct ForcedBodySystem<TBody, TLoads> : IOdeSystem
    where TBody : struct, IFrame
    where TLoads : struct, ILoads<TBody>
{
    public const int Size = 19;
    public const int Velocity = 3;
    public const int Momentum = 6;
    public const int Attitude = 9;
    public const int Slug = 13;
    public const int Work = 16;
    public const int Dissipated = 17;
    public const int CarriedAway = 18;

    public TLoads Loads;
    public ViscousSlug Damper;

    // Mass and inertia at the time Origin, and their rates; no rates outside a burn.
    public double Origin;
    public double Mass;
    public double MassRate;
    public SymmetricMatrix Inertia;
    public SymmetricMatrix InertiaRate;
    public Triple Exit;

    public readonly int Dimension
    {
        get { return Size; }
    }

    public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        Snapshot now = At(time, state);
        Quaternion q = now.Attitude;
        Triple velocity = Read(state, Velocity);
        Triple rate = now.Rate;

        BodyState<TBody> typed = Typed(state, now);
        BodyLoads<TBody> loads = Loads.At(Duration.FromSeconds(time), typed);
        Triple force = q.Turn(Bare(loads.BodyForce)) + Bare(loads.SpaceForce);
        Triple torque = q.Turn(Bare(loads.BodyTorque)) + Bare(loads.SpaceTorque);

        // Mass leaves with the velocity of the body at the nozzle.
        double flow = -MassRate;
        Triple exitVelocity = Triple.Cross(rate, Exit);
        Triple flowTorque = q.Turn(Triple.Cross(Exit, exitVelocity)) * -flow;
        double flowEnergy = (flow * ((0.5 * velocity.SquaredLength) + exitVelocity.SquaredLength))
            + (0.5 * Triple.Dot(rate, Times(InertiaRate, rate)));

        Triple slugTorque = default;
        double dissipation = 0.0;
        if (Damper.SiInertia > 0.0)
        {
            Triple slip = q.Turn(rate) - (Read(state, Slug) * (1.0 / Damper.SiInertia));
            double coefficient = Damper.SiInertia / Damper.SiRelaxation;
            slugTorque = slip * coefficient;
            dissipation = coefficient * slip.SquaredLength;
        }

        Write(derivatives, 0, velocity);
        Write(derivatives, Velocity, force * (1.0 / now.Mass));
        Write(derivatives, Momentum, torque + flowTorque);
        Write(derivatives, Slug, slugTorque);

        // The raw quaternion, not the one of unit length: its drift is watched.
        Quaternion raw = new(state[Attitude], state[Attitude + 1], state[Attitude + 2], state[Attitude + 3]);
        Quaternion turning = raw * new Quaternion(0.5 * rate.X, 0.5 * rate.Y, 0.5 * rate.Z, 0.0);
        derivatives[Attitude] = turning.X;
        derivatives[Attitude + 1] = turning.Y;
        derivatives[Attitude + 2] = turning.Z;
        derivatives[Attitude + 3] = turning.W;
        derivatives[Work] = Triple.Dot(force, velocity) + Triple.Dot(torque, q.Turn(rate));
        derivatives[Dissipated] = dissipation;
        derivatives[CarriedAway] = flowEnergy;
    }

    public readonly Snapshot At(double time, ReadOnlySpan<double> state)
    {
        double elapsed = time - Origin;
        double mass = Mass + (MassRate * elapsed);
        SymmetricMatrix inertia = Inertia + (InertiaRate * elapsed);
        Quaternion attitude = new Quaternion(state[Attitude], state[Attitude + 1], state[Attitude + 2], state[Attitude + 3]).Normalised();
        Triple bodyMomentum = attitude.Conjugate().Turn(Read(state, Momentum) - Read(state, Slug));
        return new Snapshot(mass, inertia, attitude, Solve(inertia, bodyMomentum));
    }

    public readonly double KineticEnergy(double time, ReadOnlySpan<double> state)
    {
        Snapshot now = At(time, state);
        double slug = Damper.SiInertia > 0.0 ? Read(state, Slug).SquaredLength / Damper.SiInertia : 0.0;
        return 0.5 * ((now.Mass * Read(state, Velocity).SquaredLength) + Triple.Dot(now.Rate, Times(now.Inertia, now.Rate)) + slug);
    }

    public static BodyState<TBody> Typed(ReadOnlySpan<double> state, in Snapshot now)
    {
        return new BodyState<TBody>(
            Position<Inertial>.Origin + new Vector<Length, Inertial>(state[0], state[1], state[2]),
            new Vector<Speed, Inertial>(state[Velocity], state[Velocity + 1], state[Velocity + 2]),
            new Vector<RotationalSpeed, TBody>(now.Rate.X, now.Rate.Y, now.Rate.Z),
            Rotation<TBody, Inertial>.Unchecked(now.Attitude.X, now.Attitude.Y, now.Attitude.Z, now.Attitude.W));
    }

    public static Triple Read(ReadOnlySpan<double> state, int at)
    {
        return new Triple(state[at], state[at + 1], state[at + 2]);
    }

    public static void Write(Span<double> state, int at, Triple value)
    {
        state[at] = value.X;
        state[at + 1] = value.Y;
        state[at + 2] = value.Z;
    }

    public static Triple Times(SymmetricMatrix m, Triple v)
    {
        (double x, double y, double z) = m.Times(v.X, v.Y, v.Z);
        return new Triple(x, y, z);
    }

    private static Triple Bare<TQuantity, TFrame>(Vector<TQuantity, TFrame> vector)
        where TQuantity : struct
        where TFrame : struct, IFrame
    {
        return new Triple(vector.SiX, vector.SiY, vector.SiZ);
    }

    /// <summary>Solves m x = v for a positive definite m by Cholesky's factors.</summary>
    private static Triple Solve(SymmetricMatrix m, Triple v)
    {
        double l11 = Math.Sqrt(m.Xx);
        double l21 = m.Xy / l11;
        double l31 = m.Xz / l11;
        double l22 = Math.Sqrt(m.Yy - (l21 * l21));
        double l32 = (m.Yz - (l31 * l21)) / l22;
        double l33 = Math.Sqrt(m.Zz - (l31 * l31) - (l32 * l32));
        double y1 = v.X / l11;
        double y2 = (v.Y - (l21 * y1)) / l22;
        double y3 = (v.Z - (l31 * y1) - (l32 * y2)) / l33;
        double z = y3 / l33;
        double y = (y2 - (l32 * z)) / l22;
        return new Triple((y1 - (l21 * y) - (l31 * z)) / l11, y, z);
    }

    internal readonly record struct Snapshot(double Mass, SymmetricMatrix Inertia, Quaternion Attitude, Triple Rate);
}
