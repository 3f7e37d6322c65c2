using System.Text;
using Momentum.Cases;

namespace Momentum.Tool.Files;

/// <summary>
/// The door out for every text, JSON, CSV and HTML: what would steer a terminal or turn the order of reading round is written
/// as its code, such as <c>\u202E</c>, which is its escape in JSON too.
/// </summary>
internal sealed class PrintableWriter(TextWriter writer) : TextWriter(writer.FormatProvider)
{
    public override Encoding Encoding => writer.Encoding;

    public override void Write(char value) => Printable.Write(writer, [value]);

    public override void Write(char[] buffer, int index, int count) => Printable.Write(writer, buffer.AsSpan(index, count));

    public override void Write(ReadOnlySpan<char> buffer) => Printable.Write(writer, buffer);

    public override void Write(string? value) => Printable.Write(writer, value);

    // A line ends as the writer behind ends it.
    public override void WriteLine() => writer.WriteLine();

    public override void WriteLine(string? value)
    {
        Write(value);
        writer.WriteLine();
    }

    public override void Flush() => writer.Flush();
}
