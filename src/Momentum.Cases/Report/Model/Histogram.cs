namespace Momentum.Cases.Report.Model;

/// <summary>How often a result fell in each bin.</summary>
internal sealed record Histogram
{
    /// <summary>Heading of the picture.</summary>
    public required string Title { get; init; }

    /// <summary>The result counted.</summary>
    public required ChartAxis X { get; init; }

    /// <summary>Bin edges in the axis' unit, ascending, one more than there are bins.</summary>
    public required IReadOnlyList<double> Edges { get; init; }

    /// <summary>Cases in each bin.</summary>
    public required IReadOnlyList<long> Counts { get; init; }

    /// <summary>Upright lines: limits, percentiles.</summary>
    public IReadOnlyList<ChartEvent> Events { get; init; } = [];

    /// <summary>A sentence under the picture.</summary>
    public string Caption { get; init; } = "";
}
