using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;

namespace Momentum.Cases.Answers;

/// <summary>What computes the cases of a spread: the plane or three dimensions.</summary>
internal abstract class CaseModel(CaseInputs inputs)
{
    /// <summary>What is uncertain.</summary>
    public CaseInputs Inputs => inputs;

    /// <summary>Which model it is, as the end of "computed".</summary>
    public abstract string Name { get; }

    /// <summary>Number of cases at most if nobody says.</summary>
    public virtual int UsualCases => SpreadOptions.UsualCases;

    /// <summary>Whether it knows rates across the spin axis.</summary>
    public abstract bool IsSpatial { get; }

    /// <summary>One drawn case.</summary>
    /// <exception cref="ArgumentException">What was drawn is not physical.</exception>
    public abstract DeployedCase Run(DrawnCase drawn, long number);

    /// <summary>Drawn cases in the order of their numbers.</summary>
    public abstract IEnumerable<DeployedCase> Run(ulong seed, long first, long count, CancellationToken cancellation);

    /// <summary>Cases that the caller draws.</summary>
    public abstract IEnumerable<DeployedCase> Run(long count, Func<long, DrawnCase> draw, CancellationToken cancellation);

    /// <summary>Whether two drawn cases are different motions.</summary>
    public abstract bool Differ(DrawnCase one, DrawnCase other);

    /// <summary>The body of a drawn case; null where only its spin inertia is known.</summary>
    public abstract MassProperties<Body>? Body(Case drawn);
}
