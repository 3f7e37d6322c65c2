namespace Momentum.Numerics;

/// <summary>
/// The search for the peak of a function by golden sections: each leaves 0.618 of the range, and one look is made anew. (J.
/// Kiefer, Proceedings of the American Mathematical Society 4 (1953) 502–506; from memory, not read.) MathNet.Numerics' search
/// takes its functions in a way that allocates, and refuses a function that is flat.
/// </summary>
internal static class GoldenSection
{
    private const double Share = 0.6180339887498949;

    /// <summary>
    /// The highest look of the search. A function with one peak is found as near as rounding lets its values be told apart; where
    /// it jumps, the search stays at the jump. Values that are not numbers count as low.
    /// </summary>
    /// <param name="state">What the function works on; given to it, so that none has to be made for it.</param>
    /// <param name="function">The function of the state and a place.</param>
    /// <param name="low">Where the range begins.</param>
    /// <param name="high">Where it ends.</param>
    /// <param name="sections">How often the range is cut; 40 leave 4e-9 of it.</param>
    internal static (double Place, double Value) Highest<TState>(TState state, Func<TState, double, double> function, double low, double high, int sections)
    {
        double left = high - (Share * (high - low));
        double right = low + (Share * (high - low));
        double atLeft = Look(left);
        double atRight = Look(right);
        (double Place, double Value) highest = Higher(Higher((left, double.NegativeInfinity), left, atLeft), right, atRight);
        for (int i = 0; i < sections; i++)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (Share * (high - low));
                atLeft = Look(left);
                highest = Higher(highest, left, atLeft);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (Share * (high - low));
                atRight = Look(right);
                highest = Higher(highest, right, atRight);
            }
        }

        return highest;

        double Look(double place)
        {
            double value = function(state, place);
            return double.IsNaN(value) ? double.NegativeInfinity : value;
        }
    }

    private static (double Place, double Value) Higher((double Place, double Value) highest, double place, double value) =>
        value > highest.Value ? (place, value) : highest;
}
