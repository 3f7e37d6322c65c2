using Momentum.Cases.Answers;

namespace Momentum.Cases.Report.Model;

/// <summary>What spring cords forgive.</summary>
/// <param name="Words">In a sentence.</param>
/// <param name="Rows">Errors before release.</param>
/// <param name="SpinUp">The final spin rate against the initial one.</param>
internal sealed record SpringSection(string Words, IReadOnlyList<ForgivenError> Rows, LineChart SpinUp);
