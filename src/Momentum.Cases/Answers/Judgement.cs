using Momentum.Cases.Keys;

namespace Momentum.Cases.Answers;

/// <summary>
/// A case judged, before anything is sized: whether its body can exist, how it spins, and whether it goes with the hub.
/// </summary>
public sealed class Judgement
{
    private Judgement(CaseReading reading, SpinningBody? body, IReadOnlyList<Problem> problems)
    {
        Reading = reading;
        Body = body;
        Problems = problems;
    }

    /// <summary>The case as it was read.</summary>
    public CaseReading Reading { get; }

    /// <summary>Errors and warnings of reading and judging; with an error among them there is no answer.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Whether there is an error.</summary>
    public bool HasErrors => Body is null;

    /// <summary>What was found of the body; empty with an error.</summary>
    public AnswerGroup Figures => Body is { } body ? BodyFigures.Of(body, Reading.Case!.Despin.HubRadius.Value) : new AnswerGroup("", "Body", []);

    /// <summary>The body; null if there is any error.</summary>
    internal SpinningBody? Body { get; }

    /// <summary>Judges a case; one that was not read without error keeps the errors it has.</summary>
    public static Judgement Of(CaseReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Case is not { } given)
        {
            return new Judgement(reading, null, reading.Problems);
        }

        var findings = new Findings(reading.File);
        SpinningBody? body = BodyJudge.Judge(given, reading.Files, findings);
        if (body is not null && !findings.HasErrors)
        {
            ToleranceJudge.Judge(given, body, findings);
        }

        return new Judgement(reading, findings.HasErrors ? null : body, [.. reading.Problems, .. findings.Problems]);
    }
}
