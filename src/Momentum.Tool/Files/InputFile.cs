namespace Momentum.Tool.Files;

/// <summary>A file that a result is made from.</summary>
/// <param name="What">What it is, as the middle of a sentence: "the case file".</param>
/// <param name="Identity">Which it is.</param>
internal sealed record InputFile(string What, FileIdentity Identity);
