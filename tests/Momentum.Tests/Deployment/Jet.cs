namespace Momentum.Tests.Deployment;

/// <summary>Value, first and second derivative along a line: differentiates a formula so that nobody has to by hand.</summary>
internal readonly record struct Jet(double Value, double First, double Second)
{
    public static implicit operator Jet(double value) => new(value, 0, 0);

    public static Jet operator +(Jet a, Jet b) => new(a.Value + b.Value, a.First + b.First, a.Second + b.Second);

    public static Jet operator -(Jet a, Jet b) => new(a.Value - b.Value, a.First - b.First, a.Second - b.Second);

    public static Jet operator *(Jet a, Jet b) => new(
        a.Value * b.Value,
        (a.First * b.Value) + (a.Value * b.First),
        (a.Second * b.Value) + (2 * a.First * b.First) + (a.Value * b.Second));

    public static Jet operator /(Jet a, Jet b) => a * b.Through(1 / b.Value, -1 / (b.Value * b.Value), 2 / (b.Value * b.Value * b.Value));

    public static Jet Sqrt(Jet a)
    {
        double root = Math.Sqrt(a.Value);
        return a.Through(root, 0.5 / root, -0.25 / (root * a.Value));
    }

    public static Jet Atan(Jet a)
    {
        double d = 1 / (1 + (a.Value * a.Value));
        return a.Through(Math.Atan(a.Value), d, -2 * a.Value * d * d);
    }

    private Jet Through(double f, double df, double ddf) => new(f, df * First, (ddf * First * First) + (df * Second));
}
