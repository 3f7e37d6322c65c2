namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>The accepted steps of a propagation, and the phases they belong to: what a state between them is computed from.</summary>
internal sealed class Recording(int dimension)
{
    private readonly List<double> _times = [];
    private readonly List<double> _states = [];
    private readonly List<int> _segmentOf = [];
    private readonly List<(LinkPhase[] Phases, double BearingSign)> _segments = [];

    public int Count => _times.Count;

    public double Time(int step) => _times[step];

    public ReadOnlySpan<double> State(int step) =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_states).Slice(step * dimension, dimension);

    public int SegmentOf(int step) => _segmentOf[step];

    public (LinkPhase[] Phases, double BearingSign) Segment(int segment) => _segments[segment];

    public void BeginSegment(Mechanism mechanism)
    {
        ReadOnlySpan<Link> links = mechanism.Links;
        LinkPhase[] phases = new LinkPhase[links.Length];
        for (int i = 0; i < phases.Length; i++)
        {
            phases[i] = links[i].Phase;
        }

        _segments.Add((phases, mechanism.BearingSign));
    }

    public void Add(double time, ReadOnlySpan<double> state)
    {
        _times.Add(time);
        _states.AddRange(state);
        _segmentOf.Add(_segments.Count - 1);
    }

    /// <summary>The last step that begins at or before a time.</summary>
    public int StepAt(double time)
    {
        int found = _times.BinarySearch(time);
        if (found < 0)
        {
            return Math.Max(~found - 1, 0);
        }

        while (found + 1 < _times.Count && _times[found + 1] == time)
        {
            found++;
        }

        return found;
    }
}
