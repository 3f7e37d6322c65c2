namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>A mistake that is not a matter of sizes, beside the right way to write the same.</summary>
/// <param name="Write">Writes one of the two; returns the rules that find the mistake.</param>
internal sealed record Particular(Func<Draft, bool, string[]> Write)
{
    internal static IReadOnlyList<Particular> All { get; } =
    [
        // Angles.
        new((d, wrong) => Both(d, wrong, "MOM006", "Angle a", $"double s = Math.{d.Dice.Of(["Sin", "Cos", "Tan"])}({{0}});", $"a.{d.Dice.Of(["Degrees", "Revolutions", "Arcminutes"])}", "a.Radians")),
        new((d, wrong) => Both(d, wrong, "MOM006", "RotationalSpeed w, Duration t", "var (s, c) = Math.SinCos({0});", "w.DegreesPerSecond * t.Seconds", "w.RadiansPerSecond * t.Seconds")),
        new((d, wrong) => Both(d, wrong, "MOM006", "Angle a", "double s = Math.Sin(double.DegreesToRadians({0}));", "a.Radians", "a.Degrees")),
        new((d, wrong) => Both(d, wrong, "MOM006", "Length x, Length y", "double s = Math.Cos({0});", "double.RadiansToDegrees(Math.Atan2(y.Meters, x.Meters))", "Math.Atan2(y.Meters, x.Meters)")),

        // Torque and energy.
        new((d, wrong) => Both(d, wrong, "MOM007", "Torque t, Angle a", "_ = Energy.FromJoules({0});", "t.NewtonMeters", "t.NewtonMeters * a.Radians")),
        new((d, wrong) => Both(d, wrong, "MOM007", "Energy e, Angle a", "_ = Torque.FromNewtonMeters({0});", "e.Joules", "e.Joules / a.Radians")),
        new((d, wrong) => Both(d, wrong, "MOM007", "Energy e, Torque t, Angle a", "double sum = e.Joules + {0};", "t.NewtonMeters", "t.NewtonMeters * a.Radians")),

        // Rates.
        new((d, wrong) => Both(d, wrong, "MOM008", "Frequency f", "_ = RotationalSpeed.FromRadiansPerSecond({0});", "f.Hertz", "2 * Math.PI * f.Hertz")),
        new((d, wrong) => Both(d, wrong, "MOM008", "RotationalSpeed w", "_ = Frequency.FromHertz({0});", "w.RadiansPerSecond", "w.RadiansPerSecond / (2 * Math.PI)")),
        new((d, wrong) => Both(d, wrong, "MOM008", "RotationalSpeed w, Frequency f", "bool faster = w.RadiansPerSecond > {0};", "f.Hertz", "f.Hertz * 2 * Math.PI")),
        new((d, wrong) => Both(d, wrong, "MOM005", "MassMomentOfInertia i, Frequency f", "_ = AngularMomentum.FromKilogramSquareMetersPerSecond({0});", "i.KilogramSquareMeters * f.Hertz", "i.KilogramSquareMeters * 2 * Math.PI * f.Hertz")),
        new((d, wrong) => Both(d, wrong, "MOM005", "MassMomentOfInertia i, RotationalSpeed w", "_ = AngularMomentum.FromKilogramSquareMetersPerSecond({0});", "i.KilogramSquareMeters * w.RevolutionsPerMinute", "i.KilogramSquareMeters * w.RadiansPerSecond")),

        // Mass and force.
        new((d, wrong) => Both(d, wrong, "MOM009", "Mass m", "_ = Force.FromNewtons({0});", "m.Kilograms", "m.Kilograms * 9.80665")),
        new((d, wrong) => Both(d, wrong, "MOM009", "Mass m, Force f", "_ = Force.FromPoundsForce({0});", "m.Pounds", "f.PoundsForce")),
        new((d, wrong) => Both(d, wrong, "MOM009", "Force f, Acceleration a", "_ = Mass.FromKilograms({0});", "f.KilogramsForce", "f.Newtons / a.MetersPerSecondSquared")),
        new((d, wrong) => Both(d, wrong, "MOM009", "Mass m, Mass n", "double sum = m.Slugs + {0};", "n.Pounds", "n.Slugs")),

        // Sums of different things.
        new((d, wrong) => Both(d, wrong, "MOM001", "Length x, Duration t, Speed v", "double sum = x.Meters + {0};", "v.MetersPerSecond", "v.MetersPerSecond * t.Seconds")),
        new((d, wrong) => Both(d, wrong, "MOM002", "Length x, Duration t, Speed v", "bool past = x.Meters < {0};", "t.Seconds", "v.MetersPerSecond * t.Seconds")),

        // Conversions by hand.
        new((d, wrong) => Alone(d, wrong, "MOM010", "Angle a", "double r = a.Degrees * Math.PI / 180;", "double r = a.Radians;")),
        new((d, wrong) => Alone(d, wrong, "MOM010", "RotationalSpeed w", "double r = w.RevolutionsPerMinute * 0.10472;", "double r = w.RevolutionsPerMinute * 0.5;")),
        new((d, wrong) => Alone(d, wrong, "MOM010", "Length x", "double r = 25.4 * x.Inches;", "double r = 3 * x.Inches;")),
        new((d, wrong) => Alone(d, wrong, "MOM010", "Force f", "double r = f.PoundsForce * 4.44822;", "double r = f.PoundsForce * 1.25;")),

        // Frames, points, signs.
        new((d, wrong) => Frames(d, wrong)),
        new((d, wrong) => Alone(d, wrong, "MOM011", "Vector<Speed, Body> v, Vector<Speed, Inertial> u, Vector<Speed, Inertial> n", "double s = u.X.MetersPerSecond - v.X.MetersPerSecond;", "double s = u.X.MetersPerSecond - n.X.MetersPerSecond;")),
        new((d, wrong) => Both(d, wrong, "MOM012", "[About(\"centre of mass\")] double i, [About(\"hub origin\")] double j, [About(\"hub origin\")] double k", "double sum = j + {0};", "i", "k")),
        new((d, wrong) => Both(d, wrong, "MOM013", "[ProductSign(\"tensor element\")] double i, [ProductSign(\"positive integral\")] double j, [ProductSign(\"positive integral\")] double k", "double sum = j + {0};", "i", "k")),

        // Statements.
        new((d, wrong) => Alone(d, wrong, "MOM014", "Length x", "x.ToUnit(LengthUnit.Meter);", "x = x.ToUnit(LengthUnit.Meter);")),
        new((d, wrong) => Alone(d, wrong, "MOM015", "Length x, Length y", "bool same = x.Meters == y.Meters;", "bool same = Math.Abs(x.Meters - y.Meters) < 1e-9;")),

        // Temperatures.
        new((d, wrong) => Both(d, wrong, "MOM017", "Temperature t", "_ = Temperature.FromKelvins({0});", "t.DegreesCelsius", "t.Kelvins")),
    ];

    // The value comes by some way of the language.
    private static string[] Both(Draft draft, bool wrong, string rule, string parameters, string use, string bad, string good)
    {
        Declare(draft, parameters);
        draft.Statement(use.Replace("{0}", Carried(draft, wrong ? bad : good), StringComparison.Ordinal));
        return [rule, "MOM001", "MOM002", "MOM004", "MOM005", "MOM006", "MOM008"];
    }

    // A sign or a point does not survive every arithmetic, nor need it.
    private static string Carried(Draft draft, string value) => value.Length == 1 ? value : draft.Carry(value);

    private static string[] Alone(Draft draft, bool wrong, string rule, string parameters, string bad, string good)
    {
        Declare(draft, parameters);
        draft.Statement(wrong ? bad : good);
        return [rule];
    }

    private static string[] Frames(Draft draft, bool wrong)
    {
        Declare(draft, "Vector<Force, Body> f, Rotation<Body, Inertial> attitude");
        draft.Statement("Span<double> buffer = stackalloc double[3];");
        draft.Statement(wrong ? "f.CopySiTo(buffer);" : "attitude.Apply(f).CopySiTo(buffer);");
        draft.Statement("_ = Vector<Force, Inertial>.FromSi(buffer[0], buffer[1], buffer[2]);");
        return ["MOM011"];
    }

    private static void Declare(Draft draft, string parameters)
    {
        int depth = 0;
        int start = 0;
        for (int i = 0; i <= parameters.Length; i++)
        {
            if (i == parameters.Length || (parameters[i] == ',' && depth == 0))
            {
                string[] parts = parameters[start..i].Trim().Split(' ');
                _ = draft.Parameter(string.Join(' ', parts[..^1]), parts[^1]);
                start = i + 1;
            }
            else
            {
                depth += parameters[i] switch { '<' or '(' or '[' => 1, '>' or ')' or ']' => -1, _ => 0 };
            }
        }
    }
}
