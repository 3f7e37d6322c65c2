namespace Momentum.Cases.Report.Model;

/// <summary>Curves over a common horizontal axis.</summary>
internal sealed record LineChart
{
    /// <summary>Heading of the picture.</summary>
    public required string Title { get; init; }

    /// <summary>The horizontal axis.</summary>
    public required ChartAxis X { get; init; }

    /// <summary>The vertical axis.</summary>
    public required ChartAxis Y { get; init; }

    /// <summary>The curves, at most six so that they stay apart in colour and dash.</summary>
    public required IReadOnlyList<ChartSeries> Series { get; init; }

    /// <summary>What more curves than have names lie between; null if there are no more.</summary>
    public ChartBand? Band { get; init; }

    /// <summary>Upright lines.</summary>
    public IReadOnlyList<ChartEvent> Events { get; init; } = [];

    /// <summary>Marked points.</summary>
    public IReadOnlyList<ChartMark> Marks { get; init; } = [];

    /// <summary>A sentence under the picture: what to see in it.</summary>
    public string Caption { get; init; } = "";

    /// <summary>Whether the horizontal axis is the animation's time in seconds, so that a cursor follows it.</summary>
    public bool FollowsAnimation { get; init; }
}
