namespace Momentum.Dispersion;

/// <summary>How one number of an uncertain input scatters: shape and width, SI.</summary>
/// <param name="Shape">None, normal or uniform.</param>
/// <param name="Width">One standard deviation if normal, the limit to either side if uniform.</param>
internal readonly record struct InputLaw(ScatterShape Shape, double Width)
{
    /// <summary>Whether it scatters at all.</summary>
    internal bool Scatters => Shape != ScatterShape.None && Width > 0;

    /// <summary>One standard deviation.</summary>
    internal double Deviation => Shape switch
    {
        ScatterShape.Normal => Width,
        ScatterShape.Uniform => Width / Math.Sqrt(3),
        _ => 0,
    };

    /// <summary>The offset from nominal that a probability level between 0 and 1 stands for.</summary>
    internal double At(double level) => Scatters ? Width * CounterRandom.Offset(Shape, level) : 0;
}
