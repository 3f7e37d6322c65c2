namespace AnalyzerCost;

/// <summary>One way to build the generated project.</summary>
internal interface ICost
{
    /// <summary>The processor time of one build, in seconds.</summary>
    double Measure(bool withAnalyzer);
}
