using System.Globalization;
using System.Text;

namespace LinkMargin.Files.Problems;

/// <summary>
/// Which characters a name may have. Names appear in tables, pictures and messages, so none may break a line, control a
/// terminal or reverse the text around it. Joiners that scripts and emoji need are kept.
/// </summary>
public static class NameText
{
    // Embeddings, overrides and isolates (UAX #9).
    private static readonly Rune[] Bidirectional =
        [.. new[] { 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069 }.Select(code => new Rune(code))];

    // Letters and marks that draw nothing, in addition to Unicode's format characters.
    private static readonly HashSet<int> Blank = [0x034F, 0x115F, 0x1160, 0x17B4, 0x17B5, 0x3164, 0xFFA0];

    /// <summary>The name as the program stores it: without spaces around it, in Unicode normalisation form C.</summary>
    public static string Normal(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        return ComposedText.Of(written.Trim());
    }

    /// <summary>What is wrong with a name, in words that follow the quoted name; null if nothing is.</summary>
    /// <param name="text">The name.</param>
    /// <param name="mayHaveLines">Whether it is a text, not a name: line feeds and tabs are then allowed.</param>
    public static string? Fault(string text, bool mayHaveLines = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 && text.AsSpan().ContainsAnyExcept(' '))
        {
            return null; // as nearly every name, without a look at each character
        }

        for (int i = 0; i < text.Length;)
        {
            if (!Rune.TryGetRuneAt(text, i, out Rune rune))
            {
                return $"holds {Code(text[i])}, half of a character; remove it";
            }

            if (WhyRefused(rune) is { } why && !(mayHaveLines && rune.Value is '\n' or '\t'))
            {
                return $"holds {Code(rune.Value)}, {why}; remove it";
            }

            i += rune.Utf16SequenceLength;
        }

        return Look(text).Length == 0 ? "holds only invisible characters; write at least one visible character" : null;
    }

    /// <summary>The visible part of a name: two names that look the same give the same text.</summary>
    public static string Look(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (name.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0)
        {
            return name.Trim();
        }

        StringBuilder seen = new();
        foreach (Rune rune in name.EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(rune) == UnicodeCategory.SpaceSeparator)
            {
                seen.Append(' ');
            }
            else if (!IsUnseen(rune))
            {
                seen.Append(rune);
            }
        }

        return ComposedText.Of(seen.ToString()).Trim();
    }

    /// <summary>A character's code in Unicode notation.</summary>
    internal static string Code(int code) => FormattableString.Invariant($"U+{code:X4}");

    /// <summary>Whether a character is not allowed in a line that is shown to a person.</summary>
    internal static bool IsRefused(Rune rune) => WhyRefused(rune) is not null;

    private static string? WhyRefused(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Control => "a control character",
        UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => "a line break",
        _ => Bidirectional.Contains(rune) ? "which changes the direction of the text around it" : null,
    };

    // Format characters (joiners, soft hyphens, zero-width spaces), variation selectors and blank letters.
    private static bool IsUnseen(Rune rune) =>
        Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format
        || rune.Value is (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF) or (>= 0x180B and <= 0x180F)
        || Blank.Contains(rune.Value);
}
