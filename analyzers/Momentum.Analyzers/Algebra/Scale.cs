using System.Collections.Immutable;
using System.Globalization;

namespace Momentum.Analyzers.Algebra;

/// <summary>
/// How many SI units one unit is, exactly: a product of primes and π, each to an exponent in sixths. A degree is
/// 2⁻² 3⁻² 5⁻¹ π, an inch 2⁻⁴ 5⁻⁴ 127⁻… and so on, so that equality is equality and roots stay exact.
/// </summary>
internal sealed class Scale : IEquatable<Scale>
{
    // π stands among the primes as the basis 0. A factor known only as a double is a basis of its own: minus its bits.
    private const long PiBasis = 0;

    private readonly ImmutableArray<Term> _terms;

    private Scale(ImmutableArray<Term> terms) => _terms = terms;

    internal static Scale One { get; } = new(ImmutableArray<Term>.Empty);

    internal static Scale Pi { get; } = new(ImmutableArray.Create(new Term(PiBasis, Dimension.Whole)));

    /// <summary>The scale as the nearest double.</summary>
    internal double Value => _terms.Aggregate(1.0, (value, term) => value * Math.Pow(term.Size, term.Sixths / (double)Dimension.Whole));

    /// <summary>A scale from a positive whole number.</summary>
    internal static Scale Integer(long number)
    {
        ImmutableArray<Term>.Builder terms = ImmutableArray.CreateBuilder<Term>();
        for (long prime = 2; prime * prime <= number; prime++)
        {
            int count = 0;
            while (number % prime == 0)
            {
                number /= prime;
                count++;
            }

            if (count > 0)
            {
                terms.Add(new Term(prime, count * Dimension.Whole));
            }
        }

        if (number > 1)
        {
            terms.Add(new Term(number, Dimension.Whole));
        }

        return terms.Count == 0 ? One : new Scale(terms.ToImmutable());
    }

    /// <summary>A scale from the digits of a decimal number, such as <c>0.45359237</c>: no rounding on the way.</summary>
    internal static Scale Decimal(string digits)
    {
        int point = digits.IndexOf('.');
        int decimals = point < 0 ? 0 : digits.Length - point - 1;
        Scale whole = Integer(long.Parse(digits.Replace(".", string.Empty), NumberStyles.None, CultureInfo.InvariantCulture));
        return whole.Times(TenTo(-decimals));
    }

    /// <summary>A scale that is known as a double only.</summary>
    internal static Scale Rounded(double factor) => factor == 1 ? One : new Scale(ImmutableArray.Create(new Term(-BitConverter.DoubleToInt64Bits(factor), Dimension.Whole)));

    /// <summary>Whether it is 1, exactly, or as nearly as factors known as doubles can be.</summary>
    internal bool IsOne => _terms.IsEmpty || (_terms[0].Basis < 0 && Math.Abs(Value - 1) < 1e-6);

    internal static Scale TenTo(int power) => Integer(10).Power(power * Dimension.Whole)!;

    internal Scale Times(Scale other)
    {
        if (_terms.IsEmpty)
        {
            return other;
        }

        if (other._terms.IsEmpty)
        {
            return this;
        }

        ImmutableArray<Term>.Builder terms = ImmutableArray.CreateBuilder<Term>(_terms.Length + other._terms.Length);
        int i = 0;
        int j = 0;
        while (i < _terms.Length || j < other._terms.Length)
        {
            if (j == other._terms.Length || (i < _terms.Length && _terms[i].Basis < other._terms[j].Basis))
            {
                terms.Add(_terms[i++]);
            }
            else if (i == _terms.Length || other._terms[j].Basis < _terms[i].Basis)
            {
                terms.Add(other._terms[j++]);
            }
            else
            {
                int sum = _terms[i].Sixths + other._terms[j].Sixths;
                if (sum != 0)
                {
                    terms.Add(new Term(_terms[i].Basis, sum));
                }

                i++;
                j++;
            }
        }

        return terms.Count == 0 ? One : new Scale(terms.ToImmutable());
    }

    internal Scale Over(Scale other) => Times(other.Power(-Dimension.Whole)!);

    /// <summary>To a power in sixths; null where an exponent would no longer be a whole number of sixths.</summary>
    internal Scale? Power(int sixths)
    {
        if (_terms.IsEmpty || sixths == Dimension.Whole)
        {
            return this;
        }

        if (sixths == 0)
        {
            return One;
        }

        ImmutableArray<Term>.Builder terms = ImmutableArray.CreateBuilder<Term>(_terms.Length);
        foreach (Term term in _terms)
        {
            if (Dimension.Raise(term.Sixths, sixths) is not { } raised)
            {
                return null;
            }

            terms.Add(new Term(term.Basis, raised));
        }

        return new Scale(terms.MoveToImmutable());
    }

    public bool Equals(Scale? other)
    {
        if (other is null || _terms.Length != other._terms.Length)
        {
            return false;
        }

        for (int i = 0; i < _terms.Length; i++)
        {
            if (_terms[i].Basis != other._terms[i].Basis || _terms[i].Sixths != other._terms[i].Sixths)
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => Equals(obj as Scale);

    public override int GetHashCode()
    {
        int hash = 17;
        foreach (Term term in _terms)
        {
            hash = (((hash * 31) + term.Basis.GetHashCode()) * 31) + term.Sixths;
        }

        return hash;
    }

    private readonly struct Term(long basis, int sixths)
    {
        internal long Basis { get; } = basis;

        internal int Sixths { get; } = sixths;

        internal double Size => Basis == PiBasis ? Math.PI : Basis < 0 ? BitConverter.Int64BitsToDouble(-Basis) : Basis;
    }
}
