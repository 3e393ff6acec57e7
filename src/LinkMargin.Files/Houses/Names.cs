using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>The names given so far to one kind of thing; each may be given once.</summary>
internal sealed class Names(Source source, string what)
{
    private readonly Dictionary<string, Mark> given = [];

    /// <summary>Takes a name; a mistake is recorded, with both places, where it is taken already.</summary>
    public void Take(string name, Mark mark)
    {
        if (!given.TryAdd(name, mark))
        {
            source.Mistake(mark, FormattableString.Invariant(
                $"{what} named {Quote.Of(name)} is already in line {given[name].Line}; give each its own name"));
        }
    }
}
