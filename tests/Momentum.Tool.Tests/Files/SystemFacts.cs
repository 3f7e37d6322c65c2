namespace Momentum.Tool.Tests.Files;

/// <summary>A fact about links, modes and pipes as Unix has them.</summary>
public sealed class UnixFactAttribute : FactAttribute
{
    public UnixFactAttribute() => Skip = OperatingSystem.IsWindows() ? "Windows has no such files." : null;
}

/// <summary>A fact about files that only Linux tells enough of.</summary>
public sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute() => Skip = OperatingSystem.IsLinux() ? null : "Linux only.";
}

/// <summary>Facts about files that only Linux tells enough of.</summary>
public sealed class LinuxTheoryAttribute : TheoryAttribute
{
    public LinuxTheoryAttribute() => Skip = OperatingSystem.IsLinux() ? null : "Linux only.";
}
