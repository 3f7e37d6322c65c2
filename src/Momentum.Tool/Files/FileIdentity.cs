namespace Momentum.Tool.Files;

/// <summary>What makes two names the same file, hard links too: the device and its number there; where the system's numbers are not read, the path without links.</summary>
/// <param name="Device">The device; 0 if the path decides.</param>
/// <param name="Number">The file's number on it; 0 if the path decides.</param>
/// <param name="Path">The path without links; empty if the numbers decide.</param>
internal readonly record struct FileIdentity(ulong Device, ulong Number, string Path);
