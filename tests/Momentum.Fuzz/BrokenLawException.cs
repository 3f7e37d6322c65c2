namespace Momentum.Fuzz;

/// <summary>A reader accepted what it must not, or answered what it must not.</summary>
public sealed class BrokenLawException(string what) : Exception(what);
