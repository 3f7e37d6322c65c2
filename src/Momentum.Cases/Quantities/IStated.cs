namespace Momentum.Cases.Quantities;

/// <summary>A stated quantity of whatever kind.</summary>
internal interface IStated
{
    /// <summary>How it scatters.</summary>
    Tolerance Tolerance { get; }

    /// <summary>The text of the case file.</summary>
    string Text { get; }
}
