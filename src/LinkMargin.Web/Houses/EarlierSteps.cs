using LinkMargin.Files.Changes;
using LinkMargin.Files.Journals;

namespace LinkMargin.Web.Houses;

/// <summary>The steps of an earlier page that are in a journal.</summary>
internal static class EarlierSteps
{
    /// <summary>The steps that were not undone, in order.</summary>
    public static IReadOnlyList<IReadOnlyList<HouseChange>> Of(JournalContent content)
    {
        List<IReadOnlyList<HouseChange>> all = [];
        int made = 0;
        foreach (JournalEntry entry in content.Entries)
        {
            switch (entry.Do)
            {
                case JournalEntry.Change when entry.Changes is { } changes:
                    all.RemoveRange(made, all.Count - made);
                    all.Add(changes);
                    made++;
                    break;
                case JournalEntry.Undo:
                    made = Math.Max(0, made - 1);
                    break;
                case JournalEntry.Redo:
                    made = Math.Min(all.Count, made + 1);
                    break;
            }
        }

        return all[..made];
    }

    /// <summary>What the user should know before continuing from them; empty if nothing.</summary>
    /// <param name="found">The content of the journal.</param>
    /// <param name="hash">The hash of the house file now.</param>
    public static string NoteOf(JournalContent found, string hash) =>
        found.IsDamaged ? "Part of the journal is damaged; only the changes before that part can be restored."
        : found.BaseHash is { } was && was != hash && found.Entries.Count > 0 ? "The house file has changed since."
        : "";
}
