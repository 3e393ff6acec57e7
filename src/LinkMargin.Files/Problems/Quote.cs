using System.Text;

namespace LinkMargin.Files.Problems;

/// <summary>Shows what a person wrote, or what a library reported about it, in a message. None of it is printed raw.</summary>
public static class Quote
{
    /// <summary>A longer value is cut to this length, so that a message stays on one line.</summary>
    private const int LongestShown = 60;

    /// <summary>A longer sentence from a library is cut to this length.</summary>
    private const int LongestSentence = 300;

    /// <summary>The value in quotes, shortened if long; characters that cannot be printed are shown by code.</summary>
    public static string Of(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return $"'{Shown(value, LongestShown)}'";
    }

    /// <summary>A sentence from a library or the system: on one line, shortened if long, without its full stop.</summary>
    public static string Sentence(string message)
    {
        ArgumentNullException.ThrowIfNull(message);
        return Shown(message.ReplaceLineEndings(" ").Trim().TrimEnd('.'), LongestSentence);
    }

    /// <summary>A whole line of text; characters that cannot be printed are shown by code.</summary>
    public static string Line(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Shown(text, int.MaxValue);
    }

    private static string Shown(string text, int longest)
    {
        StringBuilder shown = new();
        for (int i = 0; i < text.Length;)
        {
            if (i >= longest)
            {
                return shown.Append('…').ToString();
            }

            if (!Rune.TryGetRuneAt(text, i, out Rune rune))
            {
                shown.Append('<').Append(NameText.Code(text[i++])).Append('>');
                continue;
            }

            if (NameText.IsRefused(rune))
            {
                shown.Append('<').Append(NameText.Code(rune.Value)).Append('>');
            }
            else
            {
                shown.Append(rune);
            }

            i += rune.Utf16SequenceLength;
        }

        return shown.ToString();
    }
}
