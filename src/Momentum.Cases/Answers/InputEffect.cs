using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>What one uncertain input does to the result, all others at their nominal values.</summary>
/// <param name="Input">The input.</param>
/// <param name="Below">Final spin at one standard deviation below nominal, less that at nominal.</param>
/// <param name="Above">The same at one above.</param>
/// <param name="Transverse">The larger of the changes of the transverse rate, by its components.</param>
internal sealed record InputEffect(CaseInput Input, RotationalSpeed Below, RotationalSpeed Above, RotationalSpeed Transverse);
