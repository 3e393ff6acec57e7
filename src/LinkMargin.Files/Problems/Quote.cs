using System.Text;

namespace LinkMargin.Files.Problems;

/// <summary>Shows what a person wrote inside a message.</summary>
public static class Quote
{
    /// <summary>A longer value is cut here, so that one message stays one line.</summary>
    private const int LongestShown = 60;

    /// <summary>The value between quotes, cut if long, with line ends and other control characters made visible.</summary>
    public static string Of(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        StringBuilder shown = new("'");
        foreach (char c in value.Length > LongestShown ? value[..LongestShown] : value)
        {
            shown.Append(char.IsControl(c) || char.IsSurrogate(c) && value.Length > LongestShown ? '\u00b7' : c);
        }

        return shown.Append(value.Length > LongestShown ? "\u2026'" : "'").ToString();
    }
}
