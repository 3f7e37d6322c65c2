using System.Globalization;
using Momentum.Frames;
using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>Solids placed and turned in one frame, some of them holes, that make one rigid body.</summary>
/// <typeparam name="TFrame">The frame that the parts are placed in.</typeparam>
/// <remarks>
/// <para>Parts are added and subtracted in any order; the result depends on it only by rounding. <see cref="Build"/> checks
/// only the sums; whether parts overlap, or a hole lies outside material, is told by <see cref="Conflicts"/>.</para>
/// <para>Mutable while it is built, so not safe to change from several threads. Compared by reference.</para>
/// </remarks>
public sealed class Assembly<TFrame>
    where TFrame : struct, IFrame
{
    private readonly List<Placed> _parts = [];

    /// <summary>Adds a part.</summary>
    /// <param name="name">The part's name, for the mass table and for errors.</param>
    /// <param name="solid">The solid.</param>
    /// <param name="at">Where the solid's origin goes; by default the frame's origin.</param>
    /// <param name="turned">How the solid's axes stand in the frame; by default along its axes.</param>
    /// <param name="growth">
    /// Growth allowance, a part of the mass from 0 to 100 %: how much heavier the part may still become. Mass and inertia
    /// grow alike. None by default; what is fitting depends on how far the part is designed, and is for the user to state.
    /// </param>
    /// <returns>This assembly.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The growth is not between 0 and 100 %, or the place is not finite.</exception>
    public Assembly<TFrame> Add(string name, Solid solid, Position<TFrame> at = default, Rotation<Part, TFrame> turned = default, Ratio growth = default) =>
        Place(name, solid, at, turned, growth, 1);

    /// <summary>Subtracts a part: a hole in the others.</summary>
    /// <param name="name">The hole's name, for the mass table and for errors.</param>
    /// <param name="solid">The solid that is missing, with the mass it takes away.</param>
    /// <param name="at">Where the solid's origin goes; by default the frame's origin.</param>
    /// <param name="turned">How the solid's axes stand in the frame; by default along its axes.</param>
    /// <param name="growth">Growth allowance; that of the part which the hole is in, if its density is what may grow.</param>
    /// <returns>This assembly.</returns>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The growth is not between 0 and 100 %, or the place is not finite.</exception>
    public Assembly<TFrame> Subtract(string name, Solid solid, Position<TFrame> at = default, Rotation<Part, TFrame> turned = default, Ratio growth = default) =>
        Place(name, solid, at, turned, growth, -1);

    /// <summary>The mass properties of the whole, with growth.</summary>
    /// <exception cref="ComputationRefusedException">
    /// There is no part; more is subtracted than there is; or what remains is not physical (holes outside the material, or
    /// nothing but point masses in one place). Points on one line or in one plane are a rod or a lamina and are allowed.
    /// </exception>
    public MassProperties<TFrame> Build()
    {
        if (_parts.Count == 0)
        {
            throw new ComputationRefusedException("The assembly has no part; add at least one.");
        }

        CompensatedSum added = default;
        CompensatedSum subtracted = default;
        CompensatedSum mx = default;
        CompensatedSum my = default;
        CompensatedSum mz = default;

        // Everything from the first part on, not from the origin, so that a distant origin costs no digits.
        Position<TFrame> reference = _parts[0].Centre;
        foreach (Placed part in _parts)
        {
            Vector<Length, TFrame> arm = part.Centre - reference;
            double mass = part.SignedMass;
            if (mass > 0)
            {
                added.Add(mass);
            }
            else
            {
                subtracted.Add(-mass);
            }

            mx.Add(mass * arm.SiX);
            my.Add(mass * arm.SiY);
            mz.Add(mass * arm.SiZ);
        }

        double total = added.Value - subtracted.Value;
        if (!(total > PhysicalInertia.Tolerance * added.Value))
        {
            throw new ComputationRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"More is subtracted than there is: parts add {added.Value:G9} kg, holes ({Holes()}) subtract {subtracted.Value:G9} kg."));
        }

        if (!double.IsFinite(total))
        {
            throw new ComputationRefusedException("The parts' masses add up to more than a double precision number holds; check their units.");
        }

        Position<TFrame> centre = reference + new Vector<Length, TFrame>(mx.Value / total, my.Value / total, mz.Value / total);
        (Tensor inertia, double noise) = InertiaAbout(centre);
        return PhysicalInertia.Refusal(inertia, noise) is { } reason
            ? throw new ComputationRefusedException(subtracted.Value > 0
                ? $"What the holes ({Holes()}) leave is not physical: {reason}. A hole may be misplaced, or larger than the material around it."
                : $"The assembly is not physical: {reason}.")
            : new(total, centre, inertia);
    }

    /// <summary>What each part contributes, in the order in which they were given.</summary>
    /// <exception cref="ComputationRefusedException">As <see cref="Build"/>.</exception>
    public IReadOnlyList<PartContribution<TFrame>> Contributions()
    {
        Position<TFrame> centre = Build().CentreOfMass;
        return [.. _parts.Select(part => new PartContribution<TFrame>(
            part.Name,
            part.Solid.Shape,
            part.Sign < 0,
            part.Solid.Mass,
            part.Growth,
            Mass.FromKilograms(part.SignedMass * part.Sign),
            part.Centre,
            new(centre, part.About(centre) * part.Sign)))];
    }

    /// <summary>Where parts take up the same space, and where holes are not in material: the mass of that space is counted wrong.</summary>
    /// <remarks>
    /// <para>Found by sampling: 4096 points spread evenly (an additive recurrence, the same in every run) through the box that two
    /// parts' boxes have in common, and through that of each hole. A point counts if more parts than holes and one hold it, or fewer
    /// than the holes that do. So what is told is so, by a point that shows it, but for what is thinner than a millionth of a part;
    /// a conflict in less than about a thousandth of that box may be missed, and its volume is known to a few per cent of the box.</para>
    /// <para>Points, rods, discs, spherical shells and stated parts take no part: their space is none or not known. Beside a stated
    /// part or a shell no hole is said to be outside material.</para>
    /// </remarks>
    /// <param name="cancellation">Ends the search early.</param>
    /// <returns>None for an assembly whose parts fit.</returns>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public IReadOnlyList<PartConflict<TFrame>> Conflicts(CancellationToken cancellation = default)
    {
        List<PlacedRegion> placed = [.. _parts.Where(part => part.Solid.Region is not null).Select(part => new PlacedRegion(
            part.Name, part.Solid.Region!, part.Sign < 0, (part.At - Position<TFrame>.Origin).Si, part.Cosines))];
        bool allKnown = placed.Count == _parts.Count;
        return [.. PartConflicts.Find(placed, allKnown, cancellation).Select(found => new PartConflict<TFrame>(
            found.Kind, found.Part, found.Other, Position<TFrame>.Origin + Vector<Length, TFrame>.FromSi(found.Place), Volume.FromCubicMeters(found.Volume)))];
    }

    private Assembly<TFrame> Place(string name, Solid solid, Position<TFrame> at, Rotation<Part, TFrame> turned, Ratio growth, int sign)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(solid);
        Checks.Finite(at);
        double fraction = growth.DecimalFractions;
        if (!(fraction is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(growth),
                fraction,
                string.Create(CultureInfo.InvariantCulture, $"The growth allowance of {name} is {100 * fraction} %; it must be from 0 to 100 % of the mass. Check that a percentage was not given as a fraction."));
        }

        double[] cosines = new double[9];
        turned.CopyMatrixTo(cosines);
        double grown = sign * (1 + fraction);
        _parts.Add(new(
            name, solid, growth, sign, grown * solid.SiMass, at + turned.Apply(solid.CentreOfMass.FromOrigin), solid.SiInertia.Turned(cosines) * grown, at, cosines));
        return this;
    }

    private (Tensor Inertia, double Noise) InertiaAbout(Position<TFrame> centre)
    {
        CompensatedSum xx = default;
        CompensatedSum yy = default;
        CompensatedSum zz = default;
        CompensatedSum xy = default;
        CompensatedSum xz = default;
        CompensatedSum yz = default;
        double size = 0;
        foreach (Placed part in _parts)
        {
            Tensor i = part.About(centre);
            xx.Add(i.Xx);
            yy.Add(i.Yy);
            zz.Add(i.Zz);
            xy.Add(i.Xy);
            xz.Add(i.Xz);
            yz.Add(i.Yz);
            size += i.LargestElement;
        }

        // Each part's own elements are rounded a dozen times; their sum is not rounded further.
        return (new(xx.Value, yy.Value, zz.Value, xy.Value, xz.Value, yz.Value), 12 * Math.ScaleB(1, -53) * size);
    }

    private string Holes() => string.Join(", ", _parts.Where(part => part.Sign < 0).Select(part => part.Name));

    // Mass and inertia about the part's own centre are negative for a hole.
    private sealed record Placed(string Name, Solid Solid, Ratio Growth, int Sign, double SignedMass, Position<TFrame> Centre, Tensor SignedInertia, Position<TFrame> At, double[] Cosines)
    {
        internal Tensor About(Position<TFrame> point) => SignedInertia + Tensor.OfPoint(SignedMass, (Centre - point).Si);
    }
}
