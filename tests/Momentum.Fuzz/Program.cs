using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using SharpFuzz;
using Trace = SharpFuzz.Common.Trace;

namespace Momentum.Fuzz;

/// <summary>What tests/fuzz calls: list, words, run (by a fuzzer), replay and slowest.</summary>
internal static class Program
{
    private static int Main(string[] arguments)
    {
        switch (arguments)
        {
            case ["list"]:
                Console.WriteLine(string.Join('\n', Reader.All.Select(reader => reader.Name)));
                return 0;
            case ["words", var name] when Find(name) is { } reader:
                Console.WriteLine(string.Join('\n', reader.Words.Select(Quoted)));
                return 0;
            case ["run", var name] when Find(name) is { } reader:
                WarmUp(reader);
                Fuzzer.OutOfProcess.Run(stream => reader.Read(Bytes(stream)));
                return 0;
            case ["replay", var name, .. var files] when Find(name) is { } reader:
                return Replay(reader, files);
            case ["slowest", var name, .. var files] when Find(name) is { } reader:
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{files.Select(File.ReadAllBytes).Select(input => Milliseconds(reader, input)).DefaultIfEmpty().Max():F0}"));
                return 0;
            default:
                Console.Error.WriteLine("list | words READER | run READER | replay READER FILE... | slowest READER FILE...");
                return 2;
        }
    }

    private static Reader? Find(string name) => Reader.All.FirstOrDefault(reader => reader.Name == name);

    // Code with instruments in it counts into memory that the fuzzer gives it later; until then into some of our own.
    private static unsafe void WarmUp(Reader reader)
    {
        const int Counters = 1 << 16;
        Trace.SharedMem = (byte*)NativeMemory.AllocZeroed(Counters);
        reader.WarmUp();
    }

    /// <summary>Reads the files one by one and says how each went: what was thrown, how long it took.</summary>
    private static int Replay(Reader reader, string[] files)
    {
        int failed = 0;
        foreach (string file in files)
        {
            byte[] input = File.ReadAllBytes(file);
            long start = Stopwatch.GetTimestamp();
            string verdict = "read";
            try
            {
                reader.Read(input);
            }
            catch (Exception defect)
            {
                failed++;
                verdict = defect.ToString();
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(file)} ({input.Length} bytes, {Stopwatch.GetElapsedTime(start).TotalMilliseconds:F0} ms): {verdict}"));
        }

        return failed == 0 ? 0 : 1;
    }

    // The first time pays for what is compiled then.
    private static double Milliseconds(Reader reader, byte[] input)
    {
        reader.Read(input);
        long start = Stopwatch.GetTimestamp();
        reader.Read(input);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static byte[] Bytes(Stream stream)
    {
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    // As a fuzzer's list of words wants it: in quotes, with other than plain characters as bytes.
    private static string Quoted(string word)
    {
        StringBuilder text = new("\"");
        foreach (byte b in Encoding.UTF8.GetBytes(word))
        {
            text.Append(b is >= 32 and < 127 && b != '"' && b != '\\' ? ((char)b).ToString() : string.Create(CultureInfo.InvariantCulture, $"\\x{b:x2}"));
        }

        return text.Append('"').ToString();
    }
}
