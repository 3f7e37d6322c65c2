namespace Momentum.Cases.Report.Model;

/// <summary>What is measured along one axis of a chart.</summary>
/// <param name="Name">The quantity.</param>
/// <param name="Unit">Its unit; empty for a count or a ratio.</param>
internal sealed record ChartAxis(string Name, string Unit)
{
    /// <inheritdoc/>
    public override string ToString() => Unit.Length == 0 ? Name : $"{Name} ({Unit})";
}
