namespace Momentum.Cases.Report.Model;

/// <summary>What an error before release does to the final spin rate.</summary>
/// <param name="Error">The error.</param>
/// <param name="Springs">The change with the spring cords.</param>
/// <param name="WithoutStretch">The change with cords without stretch.</param>
internal sealed record ForgivenRow(string Error, Figure Springs, Figure WithoutStretch);
