using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Momentum.Analyzers;

namespace Momentum.CodeFixes;

/// <summary>The same conversion where both units are read from names: offered for one place at a time, never for many.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class ConvertNamedFix : ConvertFix
{
    /// <summary>Creates the fix.</summary>
    public ConvertNamedFix()
        : base(Descriptors.NamesDisagree)
    {
    }

    private protected override bool RestsOnNames => true;
}
