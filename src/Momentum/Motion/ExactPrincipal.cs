using Momentum.Numerics;

namespace Momentum.Motion;

/// <summary>
/// Principal moments, ascending, and axes of a tensor in twice the digits: Jacobi's rotations, the tensor taken as exact.
/// For rotations over a long time, whose phase multiplies every rounding by the number of turns.
/// </summary>
internal sealed class ExactPrincipal
{
    private readonly DoubleDouble[] _moments = new DoubleDouble[3];
    private readonly DoubleDouble[,] _axes = new DoubleDouble[3, 3];

    /// <summary>Solves the tensor's eigenproblem.</summary>
    public ExactPrincipal(Tensor tensor)
    {
        // Quadratic convergence: a 3 by 3 matrix needs about six sweeps for 32 digits.
        const int MaximumSweeps = 20;
        DoubleDouble[,] a =
        {
            { tensor.Xx, tensor.Xy, tensor.Xz },
            { tensor.Xy, tensor.Yy, tensor.Yz },
            { tensor.Xz, tensor.Yz, tensor.Zz },
        };
        DoubleDouble[,] v = { { 1.0, 0.0, 0.0 }, { 0.0, 1.0, 0.0 }, { 0.0, 0.0, 1.0 } };
        for (int sweep = 0; sweep < MaximumSweeps; sweep++)
        {
            double off = Math.Abs(a[0, 1].High) + Math.Abs(a[0, 2].High) + Math.Abs(a[1, 2].High);
            double on = Math.Abs(a[0, 0].High) + Math.Abs(a[1, 1].High) + Math.Abs(a[2, 2].High);
            if (off <= 1e-40 * on)
            {
                break;
            }

            Annihilate(a, v, 0, 1);
            Annihilate(a, v, 0, 2);
            Annihilate(a, v, 1, 2);
        }

        int[] order = [0, 1, 2];
        Array.Sort(order, (i, j) => a[i, i] < a[j, j] ? -1 : a[j, j] < a[i, i] ? 1 : i - j);
        for (int axis = 0; axis < 3; axis++)
        {
            _moments[axis] = a[order[axis], order[axis]];
            for (int component = 0; component < 3; component++)
            {
                _axes[axis, component] = v[component, order[axis]];
            }
        }

        // An odd permutation leaves a left-handed set.
        if (Axis(0).Cross(Axis(1)).Dot(Axis(2)) < 0.0)
        {
            for (int component = 0; component < 3; component++)
            {
                _axes[2, component] = -_axes[2, component];
            }
        }
    }

    public DoubleDouble Moment(int axis)
    {
        return _moments[axis];
    }

    /// <summary>Unit vector of a principal axis by its components along the axes of the tensor.</summary>
    public Vec Axis(int axis)
    {
        return new Vec((double)_axes[axis, 0], (double)_axes[axis, 1], (double)_axes[axis, 2]);
    }

    /// <summary>Component of a vector along a principal axis.</summary>
    public DoubleDouble Along(int axis, Vec vector)
    {
        return (_axes[axis, 0] * vector.X) + (_axes[axis, 1] * vector.Y) + (_axes[axis, 2] * vector.Z);
    }

    private static void Annihilate(DoubleDouble[,] a, DoubleDouble[,] v, int p, int q)
    {
        if (a[p, q].High == 0.0)
        {
            return;
        }

        DoubleDouble theta = (a[q, q] - a[p, p]) / (a[p, q] * 2.0);
        DoubleDouble t;
        if (Math.Abs(theta.High) > 1e150)
        {
            t = (DoubleDouble)0.5 / theta;
        }
        else
        {
            t = (DoubleDouble)1.0 / (DoubleDouble.Abs(theta) + DoubleDouble.Sqrt((theta * theta) + 1.0));
            t = theta.High < 0.0 ? -t : t;
        }

        DoubleDouble cosine = (DoubleDouble)1.0 / DoubleDouble.Sqrt((t * t) + 1.0);
        DoubleDouble sine = t * cosine;
        int r = 3 - p - q;
        DoubleDouble shift = t * a[p, q];
        a[p, p] -= shift;
        a[q, q] += shift;
        a[p, q] = a[q, p] = default;
        DoubleDouble rp = a[r, p];
        DoubleDouble rq = a[r, q];
        a[r, p] = a[p, r] = (cosine * rp) - (sine * rq);
        a[r, q] = a[q, r] = (sine * rp) + (cosine * rq);
        for (int i = 0; i < 3; i++)
        {
            DoubleDouble ip = v[i, p];
            DoubleDouble iq = v[i, q];
            v[i, p] = (cosine * ip) - (sine * iq);
            v[i, q] = (sine * ip) + (cosine * iq);
        }
    }
}
