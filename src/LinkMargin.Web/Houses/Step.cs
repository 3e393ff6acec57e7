using LinkMargin.Engine.Houses;
using LinkMargin.Files.Changes;
using LinkMargin.Files.Edits;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Web.Houses;

/// <summary>The changes of one action: a drag, a click, or a remedy with all it needs.</summary>
/// <param name="Changes">The changes, in order.</param>
/// <param name="Words">The same in words.</param>
internal sealed record Step(IReadOnlyList<HouseChange> Changes, IReadOnlyList<string> Words)
{
    /// <summary>A house with more changes; the previous one is not modified.</summary>
    /// <exception cref="EditFaultException">One of them cannot be made.</exception>
    public static (LoadedHouse Now, IReadOnlyList<string> People, Step Step) Try(
        LoadedHouse before, IReadOnlyList<string> people, IReadOnlyList<HouseChange> changes)
    {
        House house = before.House;
        List<string> words = [], whatIf = [];
        foreach (HouseChange change in changes)
        {
            words.Add(ChangeWords.Of(change, house, before.Unit));

            // Captions name people by themselves.
            if (change.Kind != ChangeKinds.People)
            {
                whatIf.Add(words[^1]);
            }

            foreach (var edit in new ChangeReader(house, before.Tables, before.Unit).Read(change))
            {
                house = edit.ApplyTo(house);
            }

            people = change.Kind == ChangeKinds.People ? [.. (change.Seats ?? []).Distinct(StringComparer.Ordinal)] : people;
        }

        return (before with { House = house, WhatIf = [.. before.WhatIf, .. whatIf] }, people, new Step(changes, words));
    }
}
