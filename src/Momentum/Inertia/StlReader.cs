using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Momentum.Inertia;

/// <summary>
/// Reads the facets of an STL file. Nothing that the file claims is believed before the bytes are there: the facet count
/// of a binary file must agree with its length before anything is set aside for it.
/// </summary>
internal static class StlReader
{
    private const int HeaderBytes = 84;
    private const int FacetBytes = 50;
    private const int MostBytes = 1 << 28;
    private const string NumberExample = "a number such as 1.5 or -2e-3";

    /// <summary>Reads a stream to its end.</summary>
    internal static double[] Read(Stream stream)
    {
        using MemoryStream bytes = new();
        byte[] buffer = new byte[1 << 16];
        int read;
        while ((read = stream.Read(buffer, 0, buffer.Length)) > 0)
        {
            if (bytes.Length + read > MostBytes)
            {
                throw new InvalidDataException("The file exceeds 256 MiB, which is more than is read as STL. Make the mesh coarser.");
            }

            bytes.Write(buffer, 0, read);
        }

        return Read(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    /// <summary>Nine coordinates a facet, in the file's own unit.</summary>
    internal static double[] Read(ReadOnlySpan<byte> file)
    {
        // Some binary files begin with "solid" too, so the length decides.
        uint count = file.Length >= HeaderBytes ? BinaryPrimitives.ReadUInt32LittleEndian(file[80..]) : 0;
        if (file.Length >= HeaderBytes && file.Length == HeaderBytes + ((long)FacetBytes * count))
        {
            return ReadBinary(file[HeaderBytes..], (int)count);
        }

        Text text = new(file);
        if (text.Next().Is("solid") && !file.Contains((byte)0))
        {
            return ReadText(file);
        }

        throw new InvalidDataException(
            file.Length == 0 ? "The file is empty." :
            file.Length < HeaderBytes ? $"The file has {file.Length} bytes: too few for binary STL, which has at least {HeaderBytes}, and text STL begins with the word solid." :
            string.Create(
                CultureInfo.InvariantCulture,
                $"The file is not whole: as binary STL its header announces {count} facets, which take {HeaderBytes + ((long)FacetBytes * count)} bytes, and it has {file.Length}. (Text STL would begin with the word solid and hold no zero byte.)"));
    }

    private static double[] ReadBinary(ReadOnlySpan<byte> facets, int count)
    {
        double[] coordinates = new double[9 * count];
        for (int facet = 0; facet < count; facet++)
        {
            // The first three numbers are the normal, which is not used.
            ReadOnlySpan<byte> vertices = facets.Slice((FacetBytes * facet) + 12, 36);
            for (int i = 0; i < 9; i++)
            {
                coordinates[(9 * facet) + i] = BinaryPrimitives.ReadSingleLittleEndian(vertices[(4 * i)..]);
            }
        }

        return coordinates;
    }

    private static double[] ReadText(ReadOnlySpan<byte> file)
    {
        Text text = new(file);
        List<double> coordinates = [];
        while (true)
        {
            Word word = text.Next();
            if (word.IsEnd)
            {
                return [.. coordinates];
            }

            text.Require(word, "solid");
            text.SkipLine();
            while ((word = text.Next()).Is("facet"))
            {
                text.Require(text.Next(), "normal");
                for (int i = 0; i < 3; i++)
                {
                    // The normal is not used, and some exporters write nan for it; any word will do.
                    text.RequireNotEnd(text.Next(), "the facet's normal");
                }

                text.Require(text.Next(), "outer");
                text.Require(text.Next(), "loop");
                for (int vertex = 0; vertex < 3; vertex++)
                {
                    text.Require(text.Next(), "vertex");
                    for (int i = 0; i < 3; i++)
                    {
                        coordinates.Add(text.Number(text.Next()));
                    }
                }

                text.Require(text.Next(), "endloop");
                text.Require(text.Next(), "endfacet");
            }

            text.Require(word, "endsolid", "'facet' or 'endsolid'");
            text.SkipLine();
        }
    }

    private readonly ref struct Word(ReadOnlySpan<byte> bytes)
    {
        internal ReadOnlySpan<byte> Bytes { get; } = bytes;

        internal bool IsEnd => Bytes.IsEmpty;

        internal bool Is(string keyword) => Ascii.EqualsIgnoreCase(Bytes, keyword);

        // Never more than a glance at what may be megabytes of rubbish.
        internal string Shown => IsEnd ? "the end of the file" :
            "'" + string.Concat(Encoding.ASCII.GetString(Bytes[..Math.Min(Bytes.Length, 24)]).Select(c => char.IsControl(c) ? '?' : c)) + (Bytes.Length > 24 ? "…'" : "'");
    }

    private ref struct Text(ReadOnlySpan<byte> file)
    {
        private readonly ReadOnlySpan<byte> _file = file;
        private int _next;
        private int _line = 1;

        internal Word Next()
        {
            while (_next < _file.Length && IsSpace(_file[_next]))
            {
                _line += _file[_next] == '\n' ? 1 : 0;
                _next++;
            }

            int start = _next;
            while (_next < _file.Length && !IsSpace(_file[_next]))
            {
                _next++;
            }

            return new(_file[start.._next]);
        }

        // The name after solid and endsolid may be any text, or none.
        internal void SkipLine()
        {
            while (_next < _file.Length && _file[_next] != '\n')
            {
                _next++;
            }
        }

        internal readonly void Require(Word word, string keyword, string? due = null)
        {
            if (!word.Is(keyword))
            {
                throw new InvalidDataException($"Line {_line} of the text STL has {word.Shown} where {due ?? $"'{keyword}'"} is due.");
            }
        }

        internal readonly void RequireNotEnd(Word word, string what)
        {
            if (word.IsEnd)
            {
                throw new InvalidDataException($"Line {_line} of the text STL has {word.Shown} where {what} is due.");
            }
        }

        internal readonly double Number(Word word) =>
            double.TryParse(word.Bytes, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
                ? value
                : throw new InvalidDataException($"Line {_line} of the text STL has {word.Shown} where a vertex coordinate is due: {NumberExample}.");

        private static bool IsSpace(byte b) => b is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)'\f' or (byte)'\v';
    }
}
