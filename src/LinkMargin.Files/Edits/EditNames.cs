using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;

namespace LinkMargin.Files.Edits;

/// <summary>Finds the things that an edit names in a house.</summary>
internal sealed class EditNames(House house)
{
    private const string On = " on ";

    /// <summary>A word without quotes around it.</summary>
    public static string Unquoted(string word) =>
        word.Length > 1 && word[0] == word[^1] && word[0] is '\'' or '"' ? word[1..^1] : word;

    /// <summary>The name as written in the house.</summary>
    public static string Of(string what, string typed, IEnumerable<string> candidates)
    {
        string word = Unquoted(typed);
        string[] known = [.. candidates.Distinct(StringComparer.Ordinal)];
        return known.Contains(word) ? word : throw Unknown(what, word, known);
    }

    /// <summary>The name as written in the house, and the level if <c>NAME on LEVEL</c> is written.</summary>
    /// <param name="what">What it names.</param>
    /// <param name="typed">What is written.</param>
    /// <param name="candidates">The names on each level, lowest first.</param>
    public (string Name, int? Level) OnLevel(string what, string typed, IEnumerable<IEnumerable<string>> candidates)
    {
        string[][] known = [.. candidates.Select(level => level.Distinct(StringComparer.Ordinal).ToArray())];
        if (Found(what, typed, known) is { } whole)
        {
            return (whole, null);
        }

        int on = typed.LastIndexOf(On, StringComparison.Ordinal);
        if (on > 0 && house.Levels.ToList().FindIndex(l => l.Name == Unquoted(typed[(on + On.Length)..])) is >= 0 and var level)
        {
            string before = typed[..on];
            return Found(what, before, [known[level]]) is { } name
                ? (name, level)
                : throw Unknown($"{what} on the level {Quote.Of(house.Levels[level].Name)} named", Unquoted(before), known[level]);
        }

        if (on > 0 && Found(what, typed[..on], known) is not null)
        {
            string noLevel = Unquoted(typed[(on + On.Length)..]);
            throw new EditFaultException($"finds no level {Quote.Of(noLevel)}; {NearestWord.Advice(noLevel, [.. house.Levels.Select(l => l.Name)])}");
        }

        throw Unknown(what, Unquoted(typed), [.. known.SelectMany(names => names).Distinct(StringComparer.Ordinal)]);
    }

    // A wall or opening between two rooms may be named from either side; a door without a name is called 'door kitchen | hall'.
    private static string? Found(string what, string typed, string[][] known)
    {
        string word = Unquoted(typed), turned = string.Join(" | ", word.Split(" | ").Reverse());
        return new[] { word, turned, $"{what} {word}", $"{what} {turned}" }
            .FirstOrDefault(name => known.Any(names => names.Contains(name)));
    }

    private static EditFaultException Unknown(string what, string word, string[] known) => new(word.Length == 0
        ? $"does not say which {what}; {NearestWord.Advice(word, known)}"
        : $"finds no {what} {Quote.Of(word)}; {NearestWord.Advice(word, known)}");
}
