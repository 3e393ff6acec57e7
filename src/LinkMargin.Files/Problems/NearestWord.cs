namespace LinkMargin.Files.Problems;

/// <summary>Finds the word that a person most likely meant.</summary>
public static class NearestWord
{
    /// <summary>A longer word is never treated as a typing error.</summary>
    internal const int LongestWord = 80;

    /// <summary>With more errors than this it is another word.</summary>
    private const int MostSlips = 4;

    /// <summary>The most candidates that are searched.</summary>
    private const int MostSearched = 2000;

    /// <summary>The most words that are listed in a message.</summary>
    private const int LongestList = 16;

    /// <summary>The candidate closest to a word, within a few typing errors; null if there is none. Ties go to the first.</summary>
    public static string? Find(string word, IEnumerable<string> candidates)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(candidates);
        if (word.Length > LongestWord)
        {
            return null;
        }

        string plain = Plain(word);
        string? nearest = null;
        int least = Math.Clamp(plain.Length / 3, 1, MostSlips) + 1;
        foreach (string candidate in candidates.Take(MostSearched))
        {
            // At least as many letters are added or dropped as the lengths differ.
            if (Math.Abs(candidate.Length - plain.Length) >= least)
            {
                continue;
            }

            int slips = Slips(plain, Plain(candidate), least);
            if (slips < least)
            {
                (nearest, least) = (candidate, slips);
            }
        }

        return nearest;
    }

    /// <summary>
    /// The end of a message about a wrong word: the word that was probably meant, or the list of valid words, or where to find that
    /// list.
    /// </summary>
    /// <param name="word">The wrong word.</param>
    /// <param name="candidates">The valid words.</param>
    /// <param name="whereListed">Where to look if the list is too long to print, such as <c>the material table</c>.</param>
    public static string Advice(string word, IReadOnlyCollection<string> candidates, string? whereListed = null)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        if (Find(word, candidates) is { } nearest)
        {
            return $"did you mean '{nearest}'?";
        }

        if (candidates.Count == 0)
        {
            return "there are none yet";
        }

        if (candidates.Count > LongestList)
        {
            return whereListed is null
                ? $"there are {candidates.Count} to choose from, such as '{candidates.First()}'"
                : $"{whereListed} lists all {candidates.Count}";
        }

        return $"write one of: {string.Join(", ", candidates)}";
    }

    /// <summary>Case, spaces, hyphens and underscores do not matter.</summary>
    private static string Plain(string word) => word.ToLowerInvariant().Replace('_', '-').Replace(' ', '-');

    /// <summary>
    /// Letters to insert, drop, change or swap with their neighbour to turn one word into the other: the restricted
    /// Damerau–Levenshtein distance, with three rows in memory. If it reaches the limit, the limit is returned; so only
    /// cells closer to the diagonal than the limit are computed.
    /// </summary>
    private static int Slips(string a, string b, int limit)
    {
        int[] beforeLast = new int[b.Length + 1], last = new int[b.Length + 1], row = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
        {
            last[j] = Math.Min(j, limit);
        }

        for (int i = 1; i <= a.Length; i++)
        {
            Array.Fill(row, limit);
            row[0] = Math.Min(i, limit);
            for (int j = Math.Max(1, i - limit + 1); j <= Math.Min(b.Length, i + limit - 1); j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                int least = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    least = Math.Min(least, beforeLast[j - 2] + 1);
                }

                row[j] = Math.Min(least, limit);
            }

            (beforeLast, last, row) = (last, row, beforeLast);
        }

        return last[b.Length];
    }
}
