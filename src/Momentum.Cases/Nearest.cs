namespace Momentum.Cases;

/// <summary>Finds the known word that a mistyped one most likely meant.</summary>
internal static class Nearest
{
    /// <summary>The closest candidate by edits (insert, delete, replace, swap), or null if none is close enough to be a slip.</summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        string? best = null;
        // A long pasted word cannot be a slip of a short key, and the table below is quadratic.
        int bestDistance = word.Length > 64 ? 0 : Math.Max(2, word.Length / 3) + 1;
        foreach (string candidate in candidates)
        {
            int distance = bestDistance == 0 ? int.MaxValue : Distance(word.ToLowerInvariant(), candidate.ToLowerInvariant());
            if (distance < bestDistance && distance < candidate.Length)
            {
                (best, bestDistance) = (candidate, distance);
            }
        }

        return best;
    }

    private static int Distance(string a, string b)
    {
        int[,] cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    cost[i, j] = i + j;
                    continue;
                }

                int replace = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                cost[i, j] = Math.Min(replace, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
                }
            }
        }

        return cost[a.Length, b.Length];
    }
}
