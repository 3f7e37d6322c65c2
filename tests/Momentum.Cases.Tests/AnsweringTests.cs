using System.Text;
using System.Text.Json.Nodes;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;

namespace Momentum.Cases.Tests;

/// <summary>What a tool builder does: read a case from text, judge it, answer it, write the answer to a stream.</summary>
public sealed class AnsweringTests
{
    private static readonly SpreadOptions _few = new(400, 1);

    [Fact]
    public void A_case_in_memory_is_answered_as_JSON_text_and_page()
    {
        var judgement = Judgement.Of(CaseReader.Read(Repository.Example("tern-stage.toml")));
        Assert.False(judgement.HasErrors, string.Join('\n', judgement.Problems));
        Answer answer = Solver.Solve(judgement, _few);

        using var json = new MemoryStream();
        JsonReport.Write(answer, json);
        JsonNode figures = JsonNode.Parse(json.ToArray())!;
        using var text = new MemoryStream();
        TextReport.Write(answer, text);
        using var page = new MemoryStream();
        HtmlReport.Write(answer, page);

        Assert.Equal("cord_length", answer.SolvedFor);
        Assert.InRange((double)figures["cord_length_m"]!, 0.1, 100);
        Assert.Contains("Cord length", Encoding.UTF8.GetString(text.ToArray()), StringComparison.Ordinal);
        Assert.EndsWith("</html>", Encoding.UTF8.GetString(page.ToArray()).TrimEnd(), StringComparison.Ordinal);
        Assert.True(json.CanWrite && page.CanWrite, "The streams are the caller's to close.");
    }

    [Fact]
    public void What_is_wrong_with_a_case_is_told_with_its_place_and_there_is_no_answer()
    {
        var judgement = Judgement.Of(CaseReader.Read(Repository.Example("tern-stage.toml").Replace("rpm", "furlong", StringComparison.Ordinal), "mine"));

        Assert.True(judgement.HasErrors);
        Problem problem = judgement.Problems[0];
        Assert.Equal(("mine", Severity.Error), (problem.File, problem.Severity));
        Assert.True(problem.Place!.Value.Line > 1);
        Assert.Contains("Problems", Assert.Throws<ArgumentException>(() => Solver.Solve(judgement)).Message, StringComparison.Ordinal);
        using var json = new MemoryStream();
        JsonReport.Write(judgement.Problems, json);
        Assert.Equal("error", (string?)JsonNode.Parse(json.ToArray())!["problems"]![0]!["severity"]);
    }

    [Fact]
    public void A_mesh_comes_from_where_the_caller_says()
    {
        // A cube of 0.4 m about the origin; the inertia of a homogeneous cube is m a²/6.
        Judgement judged = Judgement.Of(CaseReader.Read(WithMesh, files: new Files(("cube.stl", Cube(0.2)))));
        Assert.False(judged.HasErrors, string.Join('\n', judged.Problems));
        using var json = new MemoryStream();
        JsonReport.Write(judged, json);
        Assert.Equal(90 * 0.4 * 0.4 / 6, (double)JsonNode.Parse(json.ToArray())!["spin_inertia_kg_m2"]!, 1e-9);

        Assert.Contains("no such file as cube.stl", Judgement.Of(CaseReader.Read(WithMesh, files: new Files())).Problems[0].Message, StringComparison.Ordinal);
        Assert.Contains("without any files", Judgement.Of(CaseReader.Read(WithMesh)).Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Progress_is_told_and_a_cancelled_computation_ends()
    {
        var judgement = Judgement.Of(CaseReader.Read(Repository.Example("tern-stage.toml")));
        var told = new Told();
        Solver.Solve(judgement, _few, told);
        Assert.Equal(1, told.Shares[^1]);
        Assert.All(told.Shares, share => Assert.InRange(share, 0, 1));

        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => Solver.Solve(judgement, _few, cancellation: cancelled.Token));
    }

    private const string WithMesh = """
        format = 1
        title = "Invented: a cube"
        [vehicle]
        spin_axis = "z"
        [[part]]
        name = "cube"
        shape = "mesh"
        file = "cube.stl"
        file_unit = "m"
        mass = "90 kg"
        [spin]
        rate = "60 rpm"
        [despin]
        hub_radius = "0.3 m"
        weights = 2
        weight_mass = "0.5 kg"
        final_rate = "0 rpm"
        let_go = "radial"
        """;

    /// <summary>A closed cube as text STL, outward normals.</summary>
    private static string Cube(double half)
    {
        var text = new StringBuilder("solid cube\n");
        foreach (int axis in (int[])[0, 1, 2])
        {
            foreach (int side in (int[])[-1, 1])
            {
                (double, double)[] corners = side > 0 ? [(-1, -1), (1, -1), (1, 1), (-1, 1)] : [(-1, -1), (-1, 1), (1, 1), (1, -1)];
                foreach (int[] triangle in (int[][])[[0, 1, 2], [0, 2, 3]])
                {
                    text.Append("facet normal 0 0 0\nouter loop\n");
                    foreach (int corner in triangle)
                    {
                        double[] place = new double[3];
                        place[axis] = side * half;
                        place[(axis + 1) % 3] = corners[corner].Item1 * half;
                        place[(axis + 2) % 3] = corners[corner].Item2 * half;
                        text.Append(FormattableString.Invariant($"vertex {place[0]} {place[1]} {place[2]}\n"));
                    }

                    text.Append("endloop\nendfacet\n");
                }
            }
        }

        return text.Append("endsolid cube\n").ToString();
    }

    private sealed class Files(params (string Name, string Text)[] files) : ICaseFiles
    {
        public Stream Open(string name) => files.Where(f => f.Name == name).Select(f => new MemoryStream(Encoding.UTF8.GetBytes(f.Text))).FirstOrDefault()
            ?? throw new FileNotFoundException();
    }

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }
}
