namespace Momentum.Cases.Keys;

/// <summary>What a key's value looks like.</summary>
internal enum KeyForm
{
    Text,
    Count,
    Truth,
    Choice,
    Quantity,
    Limit,
    Triple,
    Section,
    Sections,
}
