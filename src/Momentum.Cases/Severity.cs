namespace Momentum.Cases;

/// <summary>How bad a problem is.</summary>
public enum Severity
{
    /// <summary>The case cannot be used.</summary>
    Error,

    /// <summary>The case can be used; a reviewer should know this.</summary>
    Warning,
}
