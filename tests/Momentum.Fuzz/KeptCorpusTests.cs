using System.Runtime.CompilerServices;

namespace Momentum.Fuzz;

/// <summary>
/// What a fuzzer found once is read in every run of the tests: inputs that reach each a part of the code that no other
/// reaches, and those that once failed. tests/fuzz finds more.
/// </summary>
public sealed class KeptCorpusTests
{
    public static TheoryData<string> Readers => [.. Reader.All.Select(reader => reader.Name)];

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_kept_input_is_read_or_refused_as_documented(string name)
    {
        Reader reader = Reader.All.Single(reader => reader.Name == name);
        string[] files = Directory.GetFiles(Path.Combine(Corpus(), name));
        Assert.NotEmpty(files);
        Assert.Empty(files.Select(file => Failure(reader, file)).OfType<string>());
    }

    [Fact]
    public void Every_folder_of_the_corpus_has_its_reader() =>
        Assert.Equal(Reader.All.Select(reader => reader.Name).Order(StringComparer.Ordinal), Directory.GetDirectories(Corpus()).Select(folder => Path.GetFileName(folder)).Order(StringComparer.Ordinal));

    private static string? Failure(Reader reader, string file)
    {
        try
        {
            reader.Read(File.ReadAllBytes(file));
            return null;
        }
        catch (Exception defect)
        {
            return $"{Path.GetFileName(file)}: {defect}";
        }
    }

    private static string Corpus([CallerFilePath] string path = "") => Path.Combine(Path.GetDirectoryName(path)!, "Corpus");
}
