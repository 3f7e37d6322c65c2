namespace Momentum.Cases.Sections;

/// <summary>The two usual moments of letting go.</summary>
internal enum LetGoRule
{
    Tangent,
    Radial,
}
