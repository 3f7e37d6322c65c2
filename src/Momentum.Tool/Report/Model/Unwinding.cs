namespace Momentum.Tool.Report.Model;

/// <summary>The computed planar motion, dense enough that straight lines between frames look smooth.</summary>
internal sealed record Unwinding
{
    /// <summary>Radius to the cord's centreline, m.</summary>
    public required double HubRadius { get; init; }

    /// <summary>Unit of <see cref="UnwindingFrame.Spin"/>.</summary>
    public required string SpinUnit { get; init; }

    /// <summary>Frames in order of time, the first at 0 s.</summary>
    public required IReadOnlyList<UnwindingFrame> Frames { get; init; }

    /// <summary>Phases in order of time, the first at 0 s.</summary>
    public required IReadOnlyList<UnwindingPhase> Phases { get; init; }

    /// <summary>When the cords leave the hub, s; null if they never do.</summary>
    public double? LetGo { get; init; }
}
