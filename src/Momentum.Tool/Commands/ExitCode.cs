namespace Momentum.Tool.Commands;

/// <summary>What the program tells its caller.</summary>
internal enum ExitCode
{
    /// <summary>Done, and every requirement is met.</summary>
    Done = 0,

    /// <summary>Done, but a requirement is not met or cannot be judged.</summary>
    RequirementNotMet = 1,

    /// <summary>The command line or the case file is at fault, or a file cannot be read or written.</summary>
    BadInput = 2,

    /// <summary>The computation refused: not physical, no solution, not converged, a check of itself failed, or the time limit reached.</summary>
    Refused = 3,

    /// <summary>A defect of the program itself.</summary>
    Defect = 4,
}
