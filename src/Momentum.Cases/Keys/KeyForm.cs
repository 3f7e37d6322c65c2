namespace Momentum.Cases.Keys;

/// <summary>What a key's value looks like.</summary>
internal enum KeyForm
{
    Text,
    Count,
    Texts,
    Truth,
    Choice,
    Quantity,
    Limit,
    Triple,
    Section,
    Sections,
}
