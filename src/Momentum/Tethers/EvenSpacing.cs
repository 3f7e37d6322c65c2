using Momentum.Frames;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>Where things are that are spaced evenly around the hub, in the plane of the cords.</summary>
internal static class EvenSpacing
{
    /// <summary>The place of one of them, from its radial and tangential distances (m) in the directions at its cord's root.</summary>
    internal static Position<Inertial> Place(int weight, int weights, double rootAngle, double radial, double tangential)
    {
        if (weight < 0 || weight >= weights)
        {
            throw new ArgumentOutOfRangeException(
                nameof(weight), weight, $"The design has {weights} weights; ask for 0 to {weights - 1}.");
        }

        (double sine, double cosine) = Math.SinCos(rootAngle + (2 * Math.PI * weight / weights));
        return Position<Inertial>.Of(
            Length.FromMeters((radial * cosine) - (tangential * sine)),
            Length.FromMeters((radial * sine) + (tangential * cosine)),
            Length.Zero);
    }
}
