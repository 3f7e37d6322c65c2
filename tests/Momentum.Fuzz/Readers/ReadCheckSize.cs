using System.Text;
using Momentum.Cases;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;

namespace Momentum.Fuzz.Readers;

/// <summary>Read, check, size and write in one process. An answer has finite figures; a refusal is the library's own.</summary>
internal sealed class ReadCheckSize : Reader
{
    // As few cases as make a spread: the figures of the design are what is looked at.
    private static readonly SpreadOptions _few = new(20, 1);

    internal override string Name => "read-check-size";

    internal override IEnumerable<string> Words => CaseWords.All;

    internal override void WarmUp()
    {
        QuantityTexts.MakeTables();
        Read(Encoding.UTF8.GetBytes(StarterCase.Write()));
    }

    internal override void Read(byte[] input)
    {
        Judgement judgement = Judgement.Of(CaseText.Reading(input));
        JsonReport.Write(judgement.Problems, Stream.Null);
        if (judgement.HasErrors)
        {
            return;
        }

        TextReport.Write(judgement, Stream.Null);
        try
        {
            Answer answer = Solver.Solve(judgement, _few);
            foreach (AnswerFigure figure in answer.Figures.Figures)
            {
                Holds(double.IsFinite(figure.Value), $"{figure.Key} is {figure.Value}.");
            }

            TextReport.Write(answer, Stream.Null);
            JsonReport.Write(answer, Stream.Null);
        }
        catch (ComputationRefusedException refusal)
        {
            Holds(refusal.Message.Length > 20, "A refusal says nothing.");
        }
    }
}
