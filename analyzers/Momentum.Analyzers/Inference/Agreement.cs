using System.Collections.Immutable;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>Whether two values can be in one unit, given the numbers they were multiplied by.</summary>
internal enum Agreement
{
    /// <summary>They are, or what is not known leaves room for it.</summary>
    Agree,

    /// <summary>They are, because a number in the product converts one into the other.</summary>
    ByHand,

    /// <summary>They are not.</summary>
    Disagree,
}

/// <summary>Judges two values.</summary>
internal static class Agreements
{
    /// <summary>Whether the values agree. Silent where anything is unknown.</summary>
    /// <param name="actual">One value.</param>
    /// <param name="expected">The other.</param>
    /// <param name="isSum">Whether a difference may be added to a point on a temperature scale.</param>
    internal static Agreement Of(Measured actual, Measured expected, bool isSum = false)
    {
        if (!actual.IsConcrete || !expected.IsConcrete)
        {
            return Agreement.Agree;
        }

        UnitMatch match = UnitMatch.Between(actual.Unit!, expected.Unit!);
        if (match.Agree)
        {
            return Agreement.Agree;
        }

        ImmutableArray<double> factors = expected.Factors.IsEmpty
            ? actual.Factors
            : actual.Factors.AddRange(expected.Factors.Select(f => 1 / f));
        bool pure = factors.All(Literals.IsPure);
        if (!match.DimensionsAgree)
        {
            // A literal that is no plain number may carry a dimension of its own: 9.81, a density, a spring rate. And any
            // literal may, beside a sine or an angle: 5 * Math.Sin(x) is as many metres as 2.5 * angle newton metres.
            bool carrier = (IsBare(actual) && !actual.Factors.IsEmpty) || (IsBare(expected) && !expected.Factors.IsEmpty);
            return !carrier && Literals.IsStructural(Literals.Product(actual.Factors)) && Literals.IsStructural(Literals.Product(expected.Factors)) ? Agreement.Disagree : Agreement.Agree;
        }

        if (!match.KindsAgree)
        {
            bool difference = isSum && (actual.Unit!.Kind is Kind.Unspecified or Kind.TemperatureDifference || expected.Unit!.Kind is Kind.Unspecified or Kind.TemperatureDifference);
            if (!difference)
            {
                return pure ? Agreement.Disagree : Agreement.Agree;
            }
        }

        double ratio = match.Ratio.Value;
        if (match.Ratio.IsOne || actual.Blurred || expected.Blurred || IsAmplitude(actual) || IsAmplitude(expected))
        {
            return Agreement.Agree;
        }

        if (factors.Length <= 8 && Literals.Convert(factors, ratio))
        {
            return Agreement.ByHand;
        }

        // The conversion turned upside down is as certain an error as none.
        double product = Literals.Product(factors);
        return pure || Literals.Near(product, 1 / ratio) ? Agreement.Disagree : Agreement.Agree;
    }

    // 30 * Math.Sin(x) is as many degrees as it is anything.
    private static bool IsAmplitude(Measured value) => value.Unit!.Dimension.IsNone && !value.Factors.IsEmpty && !value.Factors.All(f => f == 0.5);

    private static bool IsBare(Measured value) => value.Unit!.Dimension.WithoutAngle.IsNone;
}
