namespace LinkMargin.Plots.Labels;

/// <summary>
/// Names that have no place on a picture: each has a number at its mark and is listed in the key under that number. Names for
/// which even a number has no space are only counted.
/// </summary>
internal sealed class NumberedKey
{
    /// <summary>With more names than this, none is placed; all become numbers.</summary>
    public const int MostNumbers = 400;

    // After this many rounds of replacing names by numbers, all names are replaced.
    private const int MostRounds = 4;

    private readonly List<string> names = [];

    /// <summary>The names, starting with number 1.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>How many have neither a name nor a number on the picture.</summary>
    public int Unlabelled { get; private set; }

    /// <summary>
    /// Free places for names beside their marks; for names without one, places for numbers. If most names have no place, all
    /// become numbers, since they would only crowd each other out.
    /// </summary>
    /// <param name="names">The names.</param>
    /// <param name="request">Makes the label request for a text; the index is that of the name in the list.</param>
    /// <param name="placer">Makes an empty placer.</param>
    /// <param name="mayCrossGround">Whether the line to a name may cross ground that no label may cover.</param>
    /// <param name="inKey">The text in the key for each name; null for the names.</param>
    /// <returns>The text to write and its place, for each name; null if there is none.</returns>
    public IReadOnlyList<(string Text, PlacedLabel Place)?> Place(
        IReadOnlyList<string> names,
        Func<int, string, LabelRequest> request,
        Func<LabelPlacer> placer,
        bool mayCrossGround = true,
        IReadOnlyList<string>? inKey = null)
    {
        bool[] isNumber = new bool[names.Count];

        // This many names never fit side by side; searching places for them would only take time.
        Array.Fill(isNumber, names.Count > MostNumbers);
        IReadOnlyList<PlacedLabel?> places = [];
        int[] order = [];
        for (int round = 1; round <= MostRounds + 1; round++)
        {
            // Numbers first: each marks where a name had no space.
            order = [.. Enumerable.Range(0, names.Count).OrderBy(i => isNumber[i] ? 0 : 1)];
            int numbers = isNumber.Count(n => n);
            string[] texts = [.. order.Select((i, k) => isNumber[i] ? Written(this.names.Count + k) : names[i])];

            // A name whose line would cross other names gets a number instead.
            places = placer().PlaceFree(
                [.. order.Select((i, k) => request(i, texts[k]))], k => isNumber[order[k]], k => mayCrossGround || isNumber[order[k]]);
            int[] without = [.. Enumerable.Range(0, order.Length).Where(k => places[k] is null && !isNumber[order[k]]).Select(k => order[k])];
            if (without.Length == 0)
            {
                break;
            }

            bool all = round == MostRounds || numbers + without.Length > names.Count / 2;
            foreach (int i in all ? Enumerable.Range(0, names.Count) : without)
            {
                isNumber[i] = true;
            }
        }

        var labels = new (string, PlacedLabel)?[names.Count];
        for (int k = 0; k < order.Length; k++)
        {
            int i = order[k];
            if (places[k] is PlacedLabel place && (!isNumber[i] || this.names.Count < MostNumbers))
            {
                labels[i] = (isNumber[i] ? Written(this.names.Count) : names[i], place);
                if (isNumber[i])
                {
                    this.names.Add((inKey ?? names)[i]);
                }
            }
            else
            {
                Unlabelled++;
            }
        }

        return labels;
    }

    private static string Written(int before) => FormattableString.Invariant($"{before + 1}");
}
