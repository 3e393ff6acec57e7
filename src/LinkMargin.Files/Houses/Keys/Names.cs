using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Keys;

/// <summary>The names used so far for one kind of thing; each must be unique, and none may look like another.</summary>
internal sealed class Names(Source source, string what)
{
    private readonly Dictionary<string, (string Name, Mark Mark)> given = [];

    /// <summary>Records a name; if it is already used, an error with both places.</summary>
    public void Take(string name, Mark mark)
    {
        if (given.TryAdd(NameText.Look(name), (name, mark)))
        {
            return;
        }

        (string first, Mark at) = given[NameText.Look(name)];
        source.Error(mark, first == name
            ? FormattableString.Invariant($"{what} named {Quote.Of(name)} is already in line {at.Line}; give each its own name")
            : FormattableString.Invariant(
                $"{what} named {Quote.Of(name)} differs from the one in line {at.Line} only by invisible characters; give each its own name"));
    }
}

/// <summary>Reports lists that are too long to compute.</summary>
internal static class TooMany
{
    /// <summary>Records an error if there are too many.</summary>
    public static void Check(Source source, MappingReader group, string key, int count, int most)
    {
        if (count > most)
        {
            source.Error(group.MarkOf(key), FormattableString.Invariant($"{key}: there are {count}, and at most {most} are allowed; remove some"));
        }
    }
}
