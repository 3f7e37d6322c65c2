namespace Momentum.Cases.Report.Model;

/// <summary>A key that was read and validated but has no part in this computation.</summary>
/// <param name="Key">Full key in the case file.</param>
/// <param name="Given">Its value as written.</param>
internal sealed record UnusedKey(string Key, string Given);
