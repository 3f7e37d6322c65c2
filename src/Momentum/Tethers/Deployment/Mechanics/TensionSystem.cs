using System.Runtime.CompilerServices;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The symmetric linear system whose unknowns are the tensions of the links of fixed length, or the impulses that stop them: how the
/// length of each answers to unit tension in each. It is what is left when the accelerations are eliminated from Newton's and
/// Euler's equations. Holds its memory.
/// </summary>
internal sealed class TensionSystem(int links)
{
    private readonly int[] _links = new int[links];
    private readonly double[] _matrix = new double[links * (links + 1)];
    private readonly double[] _tensions = new double[links];
    private readonly Vec[] _hubAccelerations = new Vec[links];
    private readonly Vec[] _hubTurnings = new Vec[links];

    /// <summary>Number of unknowns.</summary>
    public int Count { get; private set; }

    /// <summary>Index of the link of each unknown.</summary>
    public ReadOnlySpan<int> Links => _links.AsSpan(0, Count);

    /// <summary>The unknowns, once solved.</summary>
    public ReadOnlySpan<double> Tensions => _tensions.AsSpan(0, Count);

    /// <summary>What unit tension in the link of an unknown does to the body origin and to the rates, if it pulls at the hub.</summary>
    public ReadOnlySpan<Vec> HubAccelerations => _hubAccelerations;

    public ReadOnlySpan<Vec> HubTurnings => _hubTurnings;

    public void Clear() => Count = 0;

    public void Add(int link) => _links[Count++] = link;

    /// <summary>Sets the right-hand side of a row.</summary>
    public void SetRight(int row, double value) => _matrix[(row * (Count + 1)) + Count] = value;

    /// <summary>Fills the matrix.</summary>
    /// <param name="links">All links, located.</param>
    /// <param name="riding">The hub with what rides on it.</param>
    /// <param name="withFriction">Whether a tension pulls as drum friction inclines it; an impulse does not.</param>
    public void Fill(ReadOnlySpan<Link> links, RidingMass riding, bool withFriction)
    {
        int n = Count;
        for (int k = 0; k < n; k++)
        {
            ref readonly Link source = ref links[_links[k]];
            if (source.Phase.Parent < 0)
            {
                Vec pull = withFriction ? source.Motion.Pull : source.Motion.Gradient;
                riding.Respond(pull, source.Motion.Position.Cross(pull), out _hubAccelerations[k], out _hubTurnings[k]);
            }
        }

        for (int j = 0; j < n; j++)
        {
            ref readonly Link link = ref links[_links[j]];
            for (int k = 0; k < n; k++)
            {
                ref readonly Link source = ref links[_links[k]];
                _matrix[(j * (n + 1)) + k] = Answer(links, link, j, source, k, withFriction ? source.Motion.Pull : source.Motion.Gradient);
            }
        }
    }

    /// <summary>Gaussian elimination with row exchange.</summary>
    public void Solve()
    {
        int n = Count;
        int width = n + 1;
        double[] m = _matrix;
        for (int column = 0; column < n; column++)
        {
            int pivot = column;
            for (int row = column + 1; row < n; row++)
            {
                if (Math.Abs(m[(row * width) + column]) > Math.Abs(m[(pivot * width) + column]))
                {
                    pivot = row;
                }
            }

            if (pivot != column)
            {
                for (int k = column; k < width; k++)
                {
                    (m[(column * width) + k], m[(pivot * width) + k]) = (m[(pivot * width) + k], m[(column * width) + k]);
                }
            }

            for (int row = column + 1; row < n; row++)
            {
                double factor = m[(row * width) + column] / m[(column * width) + column];
                for (int k = column + 1; k < width; k++)
                {
                    m[(row * width) + k] -= factor * m[(column * width) + k];
                }
            }
        }

        for (int row = n - 1; row >= 0; row--)
        {
            double sum = m[(row * width) + n];
            for (int k = row + 1; k < n; k++)
            {
                sum -= m[(row * width) + k] * _tensions[k];
            }

            _tensions[row] = sum / m[(row * width) + row];
        }
    }

    /// <summary>How the length of the link of one unknown answers to unit tension in that of another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private double Answer(ReadOnlySpan<Link> links, in Link link, int unknown, in Link source, int other, Vec pull)
    {
        int row = _links[unknown];
        int column = _links[other];
        ref readonly Vec gradient = ref link.Motion.Gradient;
        int parent = link.Phase.Parent;
        double sum = 0;
        if (row == column)
        {
            sum += gradient.Dot(pull) / link.Mass;
        }
        else if (row == source.Phase.Parent)
        {
            sum -= gradient.Dot(pull) / link.Mass;
        }

        if (parent >= 0)
        {
            double parentMass = links[parent].Mass;
            if (parent == column)
            {
                sum -= gradient.Dot(pull) / parentMass;
            }
            else if (parent == source.Phase.Parent)
            {
                sum += gradient.Dot(pull) / parentMass;
            }
        }

        if (source.Phase.Parent < 0)
        {
            sum += parent < 0
                ? gradient.Dot(_hubAccelerations[other] + _hubTurnings[other].Cross(link.Motion.Position))
                : gradient.Dot(_hubTurnings[other].Cross(link.Motion.Position - links[parent].Motion.Position));
        }

        return sum;
    }
}
