using System.Text;

namespace LinkMargin.Cli.Maps;

/// <summary>
/// File names made from the names people gave things: lower-case letters and digits, hyphens between, no name twice.
/// </summary>
internal sealed class FileNames
{
    // UTF-8 bytes, which is what a file system counts; leaves room for a number and an extension.
    private const int LongestStem = 120;

    private readonly HashSet<string> given = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The letters and digits of some words, joined by hyphens.</summary>
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

    /// <summary>A stem that was not used before: different names may have the same letters and digits.</summary>
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
