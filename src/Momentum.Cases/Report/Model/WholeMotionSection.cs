namespace Momentum.Cases.Report.Model;

/// <summary>What the report says of the motion in three dimensions, beside its pictures.</summary>
internal sealed record WholeMotionSection
{
    /// <summary>A sentence or two with what matters most.</summary>
    public required string Summary { get; init; }

    /// <summary>The wobble before, during and after, in this order; empty on a rig, whose bearing lets none be.</summary>
    public required IReadOnlyList<WobbleRow> Wobble { get; init; }

    /// <summary>The final spin rate split by cause; the last is the whole. Empty if it could not be split.</summary>
    public required IReadOnlyList<SpinPart> FinalSpin { get; init; }

    /// <summary>Unit of <see cref="FinalSpin"/>.</summary>
    public required string SpinUnit { get; init; }

    /// <summary>The largest tension of each cord.</summary>
    public required IReadOnlyList<PeakRow> Peaks { get; init; }

    /// <summary>How each weight leaves.</summary>
    public required IReadOnlyList<LetGoRow> Departures { get; init; }

    /// <summary>What the speeds of <see cref="Departures"/> are relative to, in a sentence.</summary>
    public required string SpeedsAreOf { get; init; }

    /// <summary>Where departed weights land; empty without a room.</summary>
    public required IReadOnlyList<LandingRow> Landings { get; init; }

    /// <summary>What happened, in the order of time.</summary>
    public required IReadOnlyList<EventRow> Events { get; init; }

    /// <summary>Momenta and energy, and how well their sums close.</summary>
    public required IReadOnlyList<LedgerGroup> Ledger { get; init; }
}
