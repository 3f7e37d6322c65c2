namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What happens at a known time: the release of the weights, and the let-go of cords that is already certain.</summary>
internal sealed class Clock
{
    private readonly double[] _releaseAt;
    private readonly double[] _letGoAt;

    public Clock(int cords)
    {
        _releaseAt = new double[cords];
        _letGoAt = new double[cords];
    }

    /// <summary>Before the start of a deployment of these cords.</summary>
    public void Set(Mechanism mechanism)
    {
        for (int cord = 0; cord < _releaseAt.Length; cord++)
        {
            CordConstants constants = mechanism.CordOf(cord);
            _releaseAt[cord] = constants.FreedAt;
            _letGoAt[cord] = constants.LetGo.Kind == LetGoKind.Time ? constants.LetGo.Value : double.PositiveInfinity;
        }
    }

    /// <summary>Whether what makes a cord let go is still to come; afterwards its let-go has a time.</summary>
    public bool Waits(int cord) => double.IsPositiveInfinity(_letGoAt[cord]);

    /// <summary>Whether the weight of a cord is to be released by now; true once.</summary>
    public bool Releases(int cord, double time)
    {
        bool now = _releaseAt[cord] <= time;
        if (now)
        {
            _releaseAt[cord] = double.PositiveInfinity;
        }

        return now;
    }

    /// <summary>Whether a cord is to let go by now.</summary>
    public bool LetsGo(int cord, double time) => _letGoAt[cord] <= time;

    /// <summary>A cord will let go at a time.</summary>
    public void LetGoAt(int cord, double time) => _letGoAt[cord] = time;

    /// <summary>A cord has let go: nothing of it is to come.</summary>
    public void Stop(int cord)
    {
        _releaseAt[cord] = double.PositiveInfinity;
        _letGoAt[cord] = double.PositiveInfinity;
    }

    /// <summary>The next time on the clock; infinite if there is none.</summary>
    public double Next
    {
        get
        {
            double next = double.PositiveInfinity;
            for (int cord = 0; cord < _releaseAt.Length; cord++)
            {
                next = Math.Min(next, Math.Min(_releaseAt[cord], _letGoAt[cord]));
            }

            return next;
        }
    }
}
