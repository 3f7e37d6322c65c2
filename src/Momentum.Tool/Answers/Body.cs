using UnitsNet;

namespace Momentum.Tool.Answers;

/// <summary>The spinning body of a case, without the de-spin weights and cords.</summary>
/// <param name="Mass">Its mass.</param>
/// <param name="SpinInertia">Its moment of inertia about the spin axis through its centre of mass.</param>
internal sealed record Body(Mass Mass, MassMomentOfInertia SpinInertia);
