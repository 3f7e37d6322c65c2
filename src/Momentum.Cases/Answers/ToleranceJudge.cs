using Momentum.Cases.Keys;
using Momentum.Tethers;

namespace Momentum.Cases.Answers;

/// <summary>Sees that every stated tolerance acts, and refuses one that changes nothing.</summary>
internal static class ToleranceJudge
{
    /// <summary>Judges the tolerances and correlated groups of a case whose body is in order.</summary>
    public static void Judge(Case given, SpinningBody body, Findings findings)
    {
        CaseInputs.Judge(given, findings);
        if (findings.HasErrors)
        {
            return;
        }

        CaseModel model;
        try
        {
            var inputs = new CaseInputs(given);
            PlanarMotion motion = Solver.Sized(given, body, out _);
            model = body.Inertia is null
                ? new PlaneModel(motion, body, inputs)
                : new SpaceModel(WholeMotion.Deployment(given, body, motion.Design, default), motion, body.Meshes, inputs);
        }
        catch (Exception refusal) when (refusal is ArgumentException or ComputationRefusedException)
        {
            // There is no design whose tolerances could act; whoever asks for it is told why.
            return;
        }

        foreach (CaseInput input in model.Inputs.All.Where(i => i.Text.Length > 0))
        {
            if (!Acts(input))
            {
                findings.Error(input.Section!, input.Property, "its tolerance cannot act: " + Why(input), "a tolerance that changes the motion or what it is held against", "Remove the tolerance, or state what it needs.");
            }
        }

        // About a case in the middle of everything else, so that what acts only beside another error is seen to act.
        bool Acts(CaseInput input)
        {
            double[] one = Enumerable.Repeat(0.7, model.Inputs.Levels).ToArray();
            double[] other = [.. one];
            foreach (int level in model.Inputs.LevelsOf(input))
            {
                other[level] = 0.2;
            }

            try
            {
                return model.Differ(model.Inputs.Draw(one), model.Inputs.Draw(other));
            }
            catch (Exception refusal) when (refusal is ArgumentException or ComputationRefusedException)
            {
                // It changes so much that nothing is left to compare.
                return true;
            }
        }

        string Why(CaseInput input) =>
            !model.IsSpatial ? "only the moment of inertia about the spin axis is stated, and in the plane nothing depends on it"
            : input.Path.StartsWith("vehicle.centre", StringComparison.Ordinal) ? "heights count from the centre of mass along the spin axis, and the tolerance of the cord plane's height belongs to despin.cord_plane_offset"
            : "nothing that is computed here depends on it";
    }
}
