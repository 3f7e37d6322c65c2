using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>The forces and torques on a body. Implement it as a struct, so that calls are bound at compile time.</summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
public interface ILoads<TBody>
    where TBody : struct, IFrame
{
    /// <summary>The loads at a time and a state: smooth functions of both. Where they jump, end one run and begin another.</summary>
    /// <param name="time">The time.</param>
    /// <param name="state">The state at that time.</param>
    BodyLoads<TBody> At(Duration time, in BodyState<TBody> state);
}
