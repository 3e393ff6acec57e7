using System.Text.RegularExpressions;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the names of one table's rows and checks that none is used twice.</summary>
/// <param name="reserved">Words with another meaning where a row can be named.</param>
internal sealed partial class RowNames(params string[] reserved)
{
    private readonly Dictionary<string, Mark> seen = [];

    /// <summary>Every name read, including those of rows with errors.</summary>
    public IReadOnlyCollection<string> Met => seen.Keys;

    /// <summary>A row's name; null, with an error recorded, if it cannot be used.</summary>
    public string? Read(MappingReader row)
    {
        if (row.RequiredName("name") is not { } name)
        {
            return null;
        }

        Mark mark = row.MarkOf("name");
        if (!Word().IsMatch(name))
        {
            row.Source.Error(mark, $"name: {Quote.Of(name)} is not one word of lower-case letters, digits and hyphens; write, for example, '{AsWord(name)}'");
            return null;
        }

        if (reserved.Contains(name))
        {
            row.Source.Error(mark, $"name: '{name}' has a special meaning in a table; choose another name");
            return null;
        }

        if (seen.TryGetValue(name, out Mark first))
        {
            row.Source.Error(mark, FormattableString.Invariant(
                $"name: '{name}' appears twice; the first is in line {first.Line}, so rename or remove one"));
            return null;
        }

        seen.Add(name, mark);
        return name;
    }

    /// <summary>A kind of rows, if written; null, with an error recorded, if it is not valid.</summary>
    public static string? ReadKind(MappingReader row, string key)
    {
        string? kind = row.OptionalName(key);
        if (kind is null || Word().IsMatch(kind))
        {
            return kind;
        }

        row.Source.Error(row.MarkOf(key), $"{key}: {Quote.Of(kind)} is not one word of lower-case letters, digits and hyphens; write, for example, '{AsWord(kind)}'");
        return null;
    }

    private static string AsWord(string name)
    {
        string word = NotOfAWord().Replace(name.ToLowerInvariant(), "-").Trim('-');
        return word.Length == 0 ? "my-wall" : word;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex("[^a-z0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex NotOfAWord();
}
