namespace Momentum.Cases.Report.Model;

/// <summary>Which case file the report was made from, and by what, so that a reviewer can match the two.</summary>
/// <param name="FileName">Name of the case file, without its folder.</param>
/// <param name="Sha256">SHA-256 of the file's bytes, as 64 hexadecimal digits.</param>
/// <param name="ToolVersion">Version of the tool that wrote the report.</param>
internal sealed record CaseIdentity(string FileName, string Sha256, string ToolVersion);
