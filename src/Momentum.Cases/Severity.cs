namespace Momentum.Cases;

internal enum Severity
{
    /// <summary>The case cannot be used.</summary>
    Error,

    /// <summary>The case can be used; a reviewer should know this.</summary>
    Warning,
}
