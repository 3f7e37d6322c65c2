namespace Momentum.Cases.Syntax;

internal enum TomlScalarKind
{
    Whole,
    Decimal,
    Truth,
    Date,
}
