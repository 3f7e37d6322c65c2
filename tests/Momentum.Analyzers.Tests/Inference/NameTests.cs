using Momentum.Analyzers.Inference;
using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Inference;

public sealed class NameTests
{
    [Theory]
    [InlineData("rateRpm", "rpm")]
    [InlineData("rate_rpm", "rpm")]
    [InlineData("RATE_RPM", "rpm")]
    [InlineData("_lengthMm", "mm")]
    [InlineData("length_mm", "mm")]
    [InlineData("length_m", "m")]
    [InlineData("lengthM", "m")]
    [InlineData("lengthInMeters", "m")]
    [InlineData("LengthMeters", "m")]
    [InlineData("durationSeconds", "s")]
    [InlineData("seconds", "s")]
    [InlineData("delayMs", "ms")]
    [InlineData("thrustLbf", "lbf")]
    [InlineData("thrustPounds", "lbf")]
    [InlineData("massPounds", "lb")]
    [InlineData("angleDeg", "deg")]
    [InlineData("angleInDegrees", "deg")]
    [InlineData("omegaRadPerSec", "rad/s")]
    [InlineData("omega_rad_s", "rad/s")]
    [InlineData("omegaRadS", "rad/s")]
    [InlineData("speedMetersPerSecond", "m/s")]
    [InlineData("speedMps", "m/s")]
    [InlineData("accel_m_s2", "m/s^2")]
    [InlineData("accelMPerS2", "m/s^2")]
    [InlineData("inertia_kg_m2", "kg*m^2")]
    [InlineData("inertiaKgM2", "kg*m^2")]
    [InlineData("torqueNm", "N*m")]
    [InlineData("torque_N_m", "N*m")]
    [InlineData("pressurePsi", "psi")]
    [InlineData("frequencyHz", "Hz")]
    [InlineData("forceN", "N")]
    [InlineData("thrust_kN", "kN")]
    [InlineData("pressureKPa", "kPa")]
    [InlineData("ratedKW", "kW")]
    [InlineData("pressure_MPa", "MPa")]
    [InlineData("MmPerInch", "mm/in")]
    [InlineData("radiansPerDegree", "rad/deg")]
    [InlineData("degToRad", "rad/deg")]
    [InlineData("RpmToRadPerSec", "rad/s/rpm")]
    public void A_suffix_is_read(string name, string unit) => Assert.Equal(Momentum.Analyzers.Algebra.UnitText.Read(unit)!, NameUnits.Read(name));

    [Theory]
    [InlineData("m")]
    [InlineData("s")]
    [InlineData("x")]
    [InlineData("rad")]
    [InlineData("valueMin")]
    [InlineData("timeMin")]
    [InlineData("durationMin")]
    [InlineData("rotationM")]
    [InlineData("matrixM")]
    [InlineData("second")]
    [InlineData("lastSecond")]
    [InlineData("dataIn")]
    [InlineData("plugin")]
    [InlineData("m_length")]
    [InlineData("toolbar")]
    [InlineData("wheelRad")]
    [InlineData("degree")]
    [InlineData("polynomialDegrees")]
    [InlineData("degreesOfFreedom")]
    [InlineData("samplesPerSecond")]
    [InlineData("pixelsPerMeter")]
    [InlineData("angleMinutes")]
    [InlineData("arcMinutesScale")]
    [InlineData("index")]
    [InlineData("firstDay")]
    [InlineData("thrust")]
    [InlineData("scaleToMeters")]
    [InlineData("system")]
    [InlineData("items")]
    [InlineData("weightKn")]
    [InlineData("pounds")]
    public void A_word_is_not_taken_for_a_unit(string name) => Assert.Null(NameUnits.Read(name));

    [Theory]
    [InlineData("ToRadians", "rad")]
    [InlineData("DegToRad", "rad")]
    [InlineData("GetRateRpm", "rpm")]
    public void A_method_is_named_after_what_it_returns(string name, string unit) => Assert.Equal(Momentum.Analyzers.Algebra.UnitText.Read(unit)!, NameUnits.Read(name, isMethod: true));

    [Fact]
    public Task Names_on_both_ends_warn_and_on_one_end_suggest() => Check.Members(
        """
        const double DegToRad = Math.PI / 180;
        const double MmPerInch = 25.4;
        double _lengthMm;
        static double ToRadians(double deg) => deg * Math.PI / 180;
        static void Turn(double angleDeg) { }

        void Run(double lengthFt, double lengthMm, double angleDeg, double angleRad, double rateRpm, double rateHz, double timeSec, Length l, RotationalSpeed w)
        {
            double a = lengthMm + {|MOM101:lengthFt|};
            _lengthMm = {|MOM101:lengthFt|};
            Turn({|MOM101:angleRad|});
            Turn(angleDeg);
            bool b = rateRpm > {|MOM101:rateHz|};
            double c = Math.Sin({|MOM201:angleDeg|});
            double d = Math.Sin(angleDeg * DegToRad) + Math.Sin(ToRadians(angleDeg)) + Math.Cos(angleDeg * Math.PI / 180);
            double e = Math.Sin(angleRad);
            double rateRadPerSec = {|MOM201:w.RevolutionsPerMinute|};
            double f = lengthMm / MmPerInch;
            double lengthIn = f;
            double speedMmPerSec = lengthMm / timeSec;
            double speedMps = {|MOM101:lengthMm / timeSec|};
            double widthM = lengthMm / 1000;
            double heightM = lengthMm * 0.001;
            double depthM = {|MOM101:lengthMm|};
            var q = Length.FromMeters({|MOM201:lengthFt|});
            double offset = 3; offset += lengthMm;
            double margin = 1.2 * lengthMm; _lengthMm = margin;
        }
        """);

    [Fact]
    public Task Names_can_be_switched_off() => Check.Members(
        "double Run(double lengthFt, double lengthMm, Length l) => lengthFt + lengthMm + Math.Sin(l.Meters / l.Meters);",
        ("momentum_unit_names", "false"));
}
