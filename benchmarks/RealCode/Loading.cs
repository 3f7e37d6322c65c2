using System.IO.Compression;
using System.Reflection;
using Microsoft.CodeAnalysis.Diagnostics;
using Momentum.Analyzers;

namespace RealCode;

/// <summary>Where the analyzer comes from.</summary>
internal static class Loading
{
    /// <summary>The analyzer built with this program, or the one in an assembly or a package.</summary>
    internal static DiagnosticAnalyzer Analyzer(string? from)
    {
        if (from is null)
        {
            return new UnitAnalyzer();
        }

        Assembly assembly = Path.GetExtension(from) == ".nupkg" ? Packed(from) : Assembly.Load(File.ReadAllBytes(from));
        return (DiagnosticAnalyzer)Activator.CreateInstance(assembly.GetType(typeof(UnitAnalyzer).FullName!)!)!;
    }

    private static Assembly Packed(string package)
    {
        using ZipArchive archive = ZipFile.OpenRead(package);
        ZipArchiveEntry entry = archive.GetEntry("analyzers/dotnet/cs/Momentum.Analyzers.dll") ?? throw new InvalidDataException($"{package} holds no analyzers/dotnet/cs/Momentum.Analyzers.dll.");
        using MemoryStream bytes = new();
        using (Stream packed = entry.Open())
        {
            packed.CopyTo(bytes);
        }

        return Assembly.Load(bytes.ToArray());
    }
}
