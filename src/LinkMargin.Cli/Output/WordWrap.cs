using System.Globalization;
using System.Text;

namespace LinkMargin.Cli.Output;

/// <summary>Breaks text into lines at blanks; a word longer than a line is cut.</summary>
internal static class WordWrap
{
    /// <summary>How many places a text takes on a line.</summary>
    public static int WidthOf(string text) => new StringInfo(text).LengthInTextElements;

    /// <summary>The text in lines of at most a width; line ends in the text stay.</summary>
    public static IEnumerable<string> Lines(string text, int width)
    {
        foreach (string paragraph in text.Split('\n'))
        {
            var line = new StringBuilder();
            foreach (string word in Pieces(paragraph, width))
            {
                if (line.Length > 0 && WidthOf(line.ToString()) + 1 + WidthOf(word) > width)
                {
                    yield return line.ToString();
                    line.Clear();
                }

                line.Append(line.Length > 0 ? " " : "").Append(word);
            }

            yield return line.ToString();
        }
    }

    /// <summary>Writes a sentence or more in lines of at most a width.</summary>
    public static void Write(string text, TextWriter output, int width)
    {
        foreach (string line in Lines(text, width))
        {
            output.WriteLine(line);
        }
    }

    private static IEnumerable<string> Pieces(string paragraph, int width)
    {
        foreach (string word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = new StringInfo(word);
            while (rest.LengthInTextElements > width)
            {
                yield return rest.SubstringByTextElements(0, width);
                rest = new StringInfo(rest.SubstringByTextElements(width));
            }

            yield return rest.String;
        }
    }
}
