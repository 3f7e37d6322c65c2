namespace Momentum.Tool.Cases.Syntax;

internal enum TomlScalarKind
{
    Whole,
    Decimal,
    Truth,
    Date,
}
