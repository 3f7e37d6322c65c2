using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>Where things are that are spaced evenly around the hub, in the plane of the cords.</summary>
internal static class EvenSpacing
{
    /// <summary>The place of one of them, from its radial and tangential distances (m) in the directions at its cord's root.</summary>
    internal static Position<Inertial> Place(int weight, int weights, double rootAngle, double radial, double tangential) =>
        Position<Inertial>.Origin + Vector<Length, Inertial>.FromSi(At(weight, weights, rootAngle, radial, tangential));

    /// <summary>A vector of one of them, from its radial and tangential parts.</summary>
    internal static Vec At(int weight, int weights, double rootAngle, double radial, double tangential)
    {
        Require(weight, weights, nameof(weight));
        (double sine, double cosine) = Math.SinCos(rootAngle + (2 * Math.PI * weight / weights));
        return new Vec((radial * cosine) - (tangential * sine), (radial * sine) + (tangential * cosine), 0);
    }

    /// <summary>Refuses a number that none of them has.</summary>
    internal static void Require(int weight, int weights, string name)
    {
        if (weight < 0 || weight >= weights)
        {
            throw new ArgumentOutOfRangeException(name, weight, $"The design has {weights} weights; ask for 0 to {weights - 1}.");
        }
    }
}
