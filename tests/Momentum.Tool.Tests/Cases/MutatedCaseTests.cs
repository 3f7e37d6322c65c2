using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Momentum.Tool.Tests.Cases;

/// <summary>Whatever a file contains, the program ends with one of its four exit codes and without a stack trace.</summary>
public sealed class MutatedCaseTests
{
    private static readonly string[] _pieces =
    [
        "\"", "'", "[", "]", "{", "}", "=", "#", "\n", ".", ",", "\\", "\"\"\"", "1e308", "-", "+/-", "%", " max", "nan", "inf", "\0", "\ud83d\ude00", "²",
        "0", "9", "kg", "mm", "deg", "[[part]]\n", "[despin]\n", "1e-9", "e", "_", "0x1F", "1979-05-27", "true", "\t", "\r", "\u001b",
    ];

    [Property(MaxTest = 400)]
    public Property Any_mutation_of_a_case_ends_with_an_exit_code() => Prop.ForAll(Mutations(SampleCase.Text).ToArbitrary(), (Action<string>)EndsWell);

    [Property(MaxTest = 100)]
    public Property Any_mutation_of_a_case_on_springs_ends_with_an_exit_code() => Prop.ForAll(Mutations(SampleCase.OnSprings).ToArbitrary(), (Action<string>)EndsWell);

    [Property(MaxTest = 100)]
    public Property Any_truncation_of_a_case_ends_with_an_exit_code() =>
        Prop.ForAll(Gen.Choose(0, SampleCase.Text.Length).Select(n => SampleCase.Text[..n]).ToArbitrary(), (Action<string>)EndsWell);

    [Property(MaxTest = 100)]
    public Property Any_text_ends_with_an_exit_code() => Prop.ForAll(ArbMap.Default.ArbFor<string?>(), (Action<string?>)(text => EndsWell(text ?? "")));

    private static Gen<string> Mutations(string sample)
    {
        Gen<Func<string, string>> change =
            from kind in Gen.Choose(0, 3)
            from at in Gen.Choose(0, sample.Length)
            from length in Gen.Choose(1, 12)
            from piece in Gen.Elements(_pieces)
            select (Func<string, string>)(text =>
            {
                int start = Math.Min(at, text.Length);
                int end = Math.Min(start + length, text.Length);
                return kind switch
                {
                    0 => text.Insert(start, piece),
                    1 => text.Remove(start, end - start),
                    2 => text.Remove(start, end - start).Insert(start, piece),
                    _ => text.Insert(start, text[start..end]),
                };
            });
        return from count in Gen.Choose(1, 4)
               from changes in Gen.ArrayOf(change, count)
               select changes.Aggregate(sample, (text, c) => c(text));
    }

    private static void EndsWell(string text)
    {
        // A lone half of a surrogate pair cannot be written as UTF-8 and so never reaches the program.
        string written = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));
        Invocation run = Invocation.WithInput(written, "size", "-", "--cases", "100");
        Assert.InRange(run.ExitCode, 0, 3);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("unforeseen", run.Error, StringComparison.Ordinal);
        Assert.Equal(run.ExitCode >= 2, run.Output.Length == 0);
        Assert.True(run.ExitCode < 2 || run.Error.Length > 0);
    }
}
