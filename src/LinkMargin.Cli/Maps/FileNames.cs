using System.Text;

namespace LinkMargin.Cli.Maps;

/// <summary>
/// File names made of the names people gave things: letters and digits in lower case, hyphens between them, no name twice.
/// </summary>
internal sealed class FileNames
{
    // Bytes in UTF-8, which is what a file system counts; leaves room for a number and an ending.
    private const int LongestStem = 120;

    private readonly HashSet<string> given = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The letters and digits of some words, with hyphens between.</summary>
    public static string Stem(params IReadOnlyList<string> words)
    {
        var stem = new StringBuilder();
        foreach (Rune letter in string.Join('-', words).Normalize().EnumerateRunes())
        {
            if (Encoding.UTF8.GetByteCount(stem.ToString()) + letter.Utf8SequenceLength > LongestStem)
            {
                break;
            }

            if (Rune.IsLetterOrDigit(letter))
            {
                stem.Append(Rune.ToLowerInvariant(letter).ToString());
            }
            else if (stem.Length > 0 && stem[^1] != '-')
            {
                stem.Append('-');
            }
        }

        return stem.ToString().Trim('-') is { Length: > 0 } some ? some : "unnamed";
    }

    /// <summary>A stem that was not given before: different names may have the same letters and digits.</summary>
    public string Unique(params IReadOnlyList<string> words)
    {
        string stem = Stem(words), unique = stem;
        for (int i = 2; !given.Add(unique); i++)
        {
            unique = FormattableString.Invariant($"{stem}-{i}");
        }

        return unique;
    }
}
