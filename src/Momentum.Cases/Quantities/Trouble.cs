namespace Momentum.Cases.Quantities;

/// <summary>Why a text is not a quantity of the wanted kind, and what to write instead.</summary>
internal sealed record Trouble(string Message, string Remedy);
