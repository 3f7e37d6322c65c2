namespace Momentum.Cases.Answers;

/// <summary>What an error before release does to the final spin.</summary>
/// <param name="Error">The error, such as <c>1 % more initial spin</c>.</param>
/// <param name="Springs">With the spring cords.</param>
/// <param name="WithoutStretch">With cords without stretch that leave the same final spin.</param>
internal sealed record ForgivenError(string Error, AnswerFigure Springs, AnswerFigure WithoutStretch)
{
    public IEnumerable<AnswerFigure> Figures => [Springs, WithoutStretch];
}
