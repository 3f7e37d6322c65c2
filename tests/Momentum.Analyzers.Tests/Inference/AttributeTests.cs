using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Inference;

public sealed class AttributeTests
{
    [Fact]
    public Task Attributes_state_units_of_bare_numbers() => Check.Members(
        """
        [Unit("rad/s")] private double _rate;
        [Unit("kg*m^2")] public double Inertia { get; set; }
        [return: Unit("N*m*s")] double Momentum() => Inertia * _rate;
        [return: Unit("N*m*s")] double Wrong([Unit("rpm")] double rate) => {|MOM005:Inertia * rate|};
        void Take([Unit("lbf*in")] double torque, [Unit("kg")] double mass) { }
        [Unit("deg")] double Heading => 90;

        void Run(RotationalSpeed w, Torque t, Mass m, Length l)
        {
            _rate = w.RadiansPerSecond;
            _rate = {|MOM008:w.RevolutionsPerMinute|};
            _rate = {|MOM010:2 * Math.PI * w.RevolutionsPerMinute / 60|};
            Take({|MOM004:t.NewtonMeters|}, m.Kilograms);
            Take(t.PoundForceInches, {|MOM004:m.Pounds|});
            Take(mass: m.Kilograms, torque: {|MOM005:l.Meters * m.Kilograms|});
            _ = Math.Cos({|MOM006:Heading|});
            _ = RotationalSpeed.FromRevolutionsPerMinute({|MOM008:_rate|});
            double e = 0.5 * Inertia * _rate * _rate;
            _ = Energy.FromJoules(e);
            _ = Torque.FromNewtonMeters({|MOM005:Inertia * _rate|});
        }
        """);

    [Fact]
    public Task An_override_takes_over_what_its_base_states() => Check.File(
        """
        using Momentum.Quantities;
        using UnitsNet;
        abstract class Motor { public abstract void Spin([Unit("rad/s")] double rate); [Unit("N*m")] public abstract double Torque { get; } }
        class Wheel : Motor
        {
            public override void Spin(double rate) => _ = RotationalSpeed.FromRevolutionsPerMinute({|MOM008:rate|});
            public override double Torque => 3;
            void Run(Motor m, RotationalSpeed w) { m.Spin({|MOM008:w.RevolutionsPerMinute|}); Spin({|MOM008:w.RevolutionsPerMinute|}); _ = Energy.FromJoules(Torque); _ = Force.FromNewtons({|MOM004:Torque|}); }
        }
        """);

    [Fact]
    public Task An_implementation_takes_over_what_its_interface_states() => Check.File(
        """
        using Momentum.Quantities;
        using UnitsNet;
        interface IMotor { void Spin([Unit("rad/s")] double rate); [Unit("N*m")] double Torque { get; } [return: Unit("kg")] double Mass(); }
        class Wheel : IMotor
        {
            public void Spin(double rate) => _ = RotationalSpeed.FromRevolutionsPerMinute({|MOM008:rate|});
            public double Torque { get; set; }
            public double Mass() => 3;
            void Run(IMotor m, RotationalSpeed w) { m.Spin({|MOM008:w.RevolutionsPerMinute|}); Spin({|MOM008:w.RevolutionsPerMinute|}); _ = Force.FromNewtons({|MOM004:Torque|}); _ = UnitsNet.Mass.FromPounds({|MOM004:Mass()|}); }
        }
        """);

    [Fact]
    public Task Records_constructors_and_indexers_count() => Check.File(
        """
        using System;
        using Momentum.Quantities;
        using UnitsNet;
        record Sample([Unit("s")] double Time, [property: Unit("rpm")] [Unit("rpm")] double Rate);
        class Log
        {
            [Unit("s")] private readonly double[] _times = new double[4];
            [Unit("deg")] public double this[int i] => 0;
            Log([Unit("mm")] double length) { }
            void Run(Duration d, RotationalSpeed w, Length l)
            {
                _ = new Sample(d.Seconds, w.RevolutionsPerMinute);
                _ = new Sample({|MOM004:d.Milliseconds|}, {|MOM008:w.RadiansPerSecond|});
                _times[0] = {|MOM003:d.Minutes|};
                _ = new Log({|MOM004:l.Meters|});
                _ = Math.Sin({|MOM006:this[2]|});
                var s = new Sample(1, 2) with { Rate = {|MOM008:w.RadiansPerSecond|} };
            }
        }
        """);

    [Fact]
    public Task Frames_points_and_signs_are_kept_apart() => Check.Members(
        """
        [Frame(typeof(Body))] private readonly double[] _bodyRate = new double[3];
        [Frame(typeof(Inertial))] private readonly double[] _fixedRate = new double[3];
        [Unit("kg*m^2"), About("centre of mass")] private double _central;
        [Unit("kg*m^2"), About("hub origin")] private double _atOrigin;
        [Unit("kg*m^2"), ProductSign("tensor element")] private double _xy;
        [Unit("kg*m^2"), ProductSign("positive integral")] private double _pxy;

        void Take([Frame(typeof(Inertial))] double[] rate) { }
        void Euler([About("centre of mass")] double inertia) { }

        void Run(Vector<RotationalSpeed, Body> w, Vector<RotationalSpeed, Inertial> v, Rotation<Body, Inertial> q)
        {
            Take({|MOM011:_bodyRate|});
            Take(_fixedRate);
            double x = _bodyRate[0] + {|MOM011:_fixedRate[0]|};
            double y = w.X.RadiansPerSecond - {|MOM011:v.X.RadiansPerSecond|};
            _ = Vector<RotationalSpeed, Inertial>.FromSi({|MOM011:w.X.RadiansPerSecond|}, v.Y.RadiansPerSecond, 0);
            _ = Vector<RotationalSpeed, Inertial>.Of({|MOM011:w.X|}, v.Y, v.Z);
            _ = Vector<RotationalSpeed, Body>.FromSi(w.X.RadiansPerSecond, {|MOM008:w.Y.RevolutionsPerMinute|}, 0);
            Span<double> buffer = stackalloc double[3];
            w.CopySiTo(buffer);
            _ = Vector<RotationalSpeed, Inertial>.FromSi({|MOM011:buffer[0]|}, 0, 0);
            _ = Vector<RotationalSpeed, Body>.FromSi(buffer[0], buffer[1], buffer[2]);
            double s = _central + {|MOM012:_atOrigin|};
            Euler({|MOM012:_atOrigin|});
            Euler(_central);
            double p = _xy + {|MOM013:_pxy|};
            double dot = _bodyRate[0] * _fixedRate[0];
        }
        """);
}
