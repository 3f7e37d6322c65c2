namespace RealCode;

/// <summary>One report.</summary>
/// <param name="Checkout">The checkout's folder.</param>
/// <param name="Path">The file's path inside it.</param>
/// <param name="Line">The line, from 1.</param>
/// <param name="Rule">The rule's id.</param>
/// <param name="Text">The message.</param>
internal sealed record Finding(string Checkout, string Path, int Line, string Rule, string Text);
