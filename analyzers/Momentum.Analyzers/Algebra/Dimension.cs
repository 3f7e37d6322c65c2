namespace Momentum.Analyzers.Algebra;

/// <summary>
/// Exponents of the base dimensions, in sixths, so that square and cube roots stay exact.
/// </summary>
/// <remarks>
/// Plane angle is a base dimension here, and so is the cycle (what hertz counts), because a radian, a revolution and a
/// cycle are the confusions that matter. Where right code drops an angle (<c>r * w</c> is a speed), <see cref="Unit"/>
/// lets it: see <see cref="UnitMatch"/>.
/// </remarks>
internal readonly struct Dimension : IEquatable<Dimension>
{
    /// <summary>One whole power.</summary>
    internal const int Whole = 6;

    internal Dimension(int mass = 0, int length = 0, int time = 0, int angle = 0, int cycle = 0, int temperature = 0, int current = 0, int amount = 0, int light = 0)
    {
        Mass = mass;
        Length = length;
        Time = time;
        Angle = angle;
        Cycle = cycle;
        Temperature = temperature;
        Current = current;
        Amount = amount;
        Light = light;
    }

    internal int Mass { get; }

    internal int Length { get; }

    internal int Time { get; }

    internal int Angle { get; }

    internal int Cycle { get; }

    internal int Temperature { get; }

    /// <summary>Electric current.</summary>
    internal int Current { get; }

    /// <summary>Amount of substance.</summary>
    internal int Amount { get; }

    /// <summary>Luminous intensity.</summary>
    internal int Light { get; }

    internal bool IsNone => Equals(default);

    /// <summary>The same without angle and cycle: what the physics of SI would call the dimension.</summary>
    internal Dimension WithoutAngle => new(Mass, Length, Time, 0, 0, Temperature, Current, Amount, Light);

    internal Dimension WithAngle(int wholePowers) => new(Mass, Length, Time, wholePowers * Whole, Cycle, Temperature, Current, Amount, Light);

    internal static Dimension Of(int mass = 0, int length = 0, int time = 0, int angle = 0, int cycle = 0, int temperature = 0, int current = 0, int amount = 0, int light = 0) =>
        new(mass * Whole, length * Whole, time * Whole, angle * Whole, cycle * Whole, temperature * Whole, current * Whole, amount * Whole, light * Whole);

    internal Dimension Times(Dimension other) => new(
        Mass + other.Mass,
        Length + other.Length,
        Time + other.Time,
        Angle + other.Angle,
        Cycle + other.Cycle,
        Temperature + other.Temperature,
        Current + other.Current,
        Amount + other.Amount,
        Light + other.Light);

    /// <summary>To a power in sixths; null where an exponent would no longer be a whole number of sixths.</summary>
    internal Dimension? Power(int sixths)
    {
        if (Raise(Mass, sixths) is { } mass && Raise(Length, sixths) is { } length && Raise(Time, sixths) is { } time
            && Raise(Angle, sixths) is { } angle && Raise(Cycle, sixths) is { } cycle && Raise(Temperature, sixths) is { } temperature
            && Raise(Current, sixths) is { } current && Raise(Amount, sixths) is { } amount && Raise(Light, sixths) is { } light)
        {
            return new Dimension(mass, length, time, angle, cycle, temperature, current, amount, light);
        }

        return null;
    }

    internal static int? Raise(int exponent, int sixths) => exponent * sixths % Whole == 0 ? exponent * sixths / Whole : null;

    public bool Equals(Dimension other) =>
        Mass == other.Mass && Length == other.Length && Time == other.Time
        && Angle == other.Angle && Cycle == other.Cycle && Temperature == other.Temperature
        && Current == other.Current && Amount == other.Amount && Light == other.Light;

    public override bool Equals(object? obj) => obj is Dimension other && Equals(other);

    public override int GetHashCode() => (((((((((Mass * 31) + Length) * 31) + Time) * 31) + Angle) * 31) + Cycle) * 31) + Temperature + (Current * 7) + (Amount * 11) + (Light * 13);
}
