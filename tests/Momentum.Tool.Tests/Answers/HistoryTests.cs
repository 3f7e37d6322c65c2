using System.Globalization;
using System.Text.Json.Nodes;
using Momentum.Cases.Answers;

namespace Momentum.Tool.Tests.Answers;

/// <summary>The written history is the motion: it starts and ends as stated, conserves what is conserved, and agrees with the answer.</summary>
public sealed class HistoryTests
{
    [Fact]
    public void The_history_conserves_angular_momentum_and_energy_in_every_row()
    {
        Table table = Csv(SampleCase.Text, "--samples", "200");

        double momentum = table["angular_momentum_kg_m2_s", 0];
        double energy = Energy(0);
        for (int row = 0; row < table.Rows; row++)
        {
            // Sums of half a dozen terms computed from positions and velocities.
            Assert.InRange(table["angular_momentum_kg_m2_s", row] / momentum, 1 - 1e-12, 1 + 1e-12);
            Assert.InRange(Energy(row) / energy, 1 - 1e-12, 1 + 1e-12);
        }

        double Energy(int row) => table["hub_energy_j", row] + table["weights_energy_j", row] + table["cords_energy_j", row];
    }

    [Fact]
    public void The_history_holds_the_events_of_the_answer_to_the_last_digit()
    {
        Table table = Csv(SampleCase.Text, "--samples", "11");
        JsonNode answer = Invocation.WithInput(SampleCase.Text, "size", "-", "--json").Json;

        int peak = table.RowWhere("event", "peak tension");
        Assert.Equal(answer["peak_tension_time_s"]!.GetValue<double>(), table["time_s", peak]);
        Assert.Equal(answer["peak_cord_tension_n"]!.GetValue<double>(), table["cord_tension_n", peak], 1e-9);
        int letGo = table.RowWhere("event", "let go");
        Assert.Equal(answer["let_go_time_s"]!.GetValue<double>(), table["time_s", letGo]);
        Assert.Equal(answer["unwind_time_s"]!.GetValue<double>(), table["time_s", table.RowWhere("event", "fully unwound")]);
        Assert.Equal("let go", table.Text("phase", table.Rows - 1));

        // Eleven instants, of which the ninth is let-go itself, and two more events.
        Assert.Equal(13, table.Rows);
    }

    [Fact]
    public void The_history_runs_to_the_time_asked_for()
    {
        Table table = Csv(SampleCase.Text, "--samples", "3", "--until", "200 ms");

        Assert.Equal([0, 0.1, 0.2], Enumerable.Range(0, 3).Select(row => table["time_s", row]));
        Assert.Equal(3, table.Rows);
    }

    [Fact]
    public void The_last_of_many_even_instants_is_the_end_itself_and_none_is_later()
    {
        // A quotient times its divisor is now and then a rounding error more than it was: in 17 of 120 ends at fifty instants.
        foreach (int samples in new[] { 2, 3, 50, 501 })
        {
            foreach (double end in Enumerable.Range(0, 500).Select(i => 0.5 + (i * 0.00317)))
            {
                IReadOnlyList<(double Time, string Event)> instants = History.Instants(samples, end, []);
                Assert.Equal(end, instants[^1].Time);
                Assert.Equal(samples, instants.Count);
            }
        }
    }

    [Theory]
    [InlineData(50)]
    [InlineData(501)]
    public void The_whole_motion_of_a_valid_case_is_written_to_its_end(int samples)
    {
        foreach (int radius in Enumerable.Range(0, 12))
        {
            string text = SampleCase.Exact.Replace("\"420 mm\"", $"\"{400 + radius} mm\"", StringComparison.Ordinal);
            Invocation run = Invocation.WithInput(text, "run", "-", "--whole", "--samples", samples.ToString(CultureInfo.InvariantCulture));
            Assert.True(run.ExitCode == 0, run.Error);
        }
    }

    [Fact]
    public void Json_and_CSV_hold_the_same_numbers()
    {
        Table table = Csv(SampleCase.Text, "--samples", "5");
        JsonNode json = Invocation.WithInput(SampleCase.Text, "run", "-", "--samples", "5", "--json").Json;

        foreach ((string column, JsonNode? values) in json["history"]!.AsObject())
        {
            Assert.Equal(table.Rows, values!.AsArray().Count);
            for (int row = 0; row < table.Rows; row++)
            {
                if (column is "phase" or "event")
                {
                    Assert.Equal(table.Text(column, row), values[row]!.GetValue<string>());
                }
                else
                {
                    Assert.Equal(table[column, row], values[row]!.GetValue<double>());
                }
            }
        }
    }

    [Fact]
    public void The_same_case_gives_the_same_bytes() =>
        Assert.Equal(Invocation.WithInput(SampleCase.Text, "run", "-").Output, Invocation.WithInput(SampleCase.Text, "run", "-").Output);

    private static Table Csv(string text, params string[] options)
    {
        Invocation run = Invocation.WithInput(text, ["run", "-", .. options]);
        Assert.Equal(0, run.ExitCode);
        return new Table(run.Output);
    }

    private sealed class Table
    {
        private readonly string[] _header;
        private readonly string[][] _rows;

        public Table(string csv)
        {
            string[] lines = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            _header = lines[0].Split(',');
            _rows = [.. lines[1..].Select(l => l.Split(','))];
            Assert.All(_rows, row => Assert.Equal(_header.Length, row.Length));
        }

        public int Rows => _rows.Length;

        public double this[string column, int row] => double.Parse(Text(column, row), CultureInfo.InvariantCulture);

        public string Text(string column, int row) => _rows[row][Array.IndexOf(_header, column)];

        public int RowWhere(string column, string text) => Array.FindIndex(_rows, row => row[Array.IndexOf(_header, column)].Contains(text, StringComparison.Ordinal));
    }
}
