using System.Globalization;
using System.Text;

namespace LinkMargin.Reports.Layout;

/// <summary>
/// Breaks text into lines at blanks. A word longer than a line, such as the name of a file, stays whole in running text and
/// is cut in a table.
/// </summary>
internal static class WordWrap
{
    /// <summary>What stands before the second line of a message and those after it.</summary>
    public const string MessageIndent = "    ";

    /// <summary>How many places a text takes on a line.</summary>
    public static int WidthOf(string text) => new StringInfo(text).LengthInTextElements;

    /// <summary>The text in lines of at most a width; line ends in the text stay.</summary>
    public static IEnumerable<string> Lines(string text, int width, bool cutsWords = false)
    {
        foreach (string paragraph in text.Split('\n'))
        {
            var line = new StringBuilder();
            foreach (string word in Pieces(paragraph, cutsWords ? width : int.MaxValue))
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
    public static void Write(string text, TextWriter output, int width) => WriteHanging(text, output, width, "", "");

    /// <summary>Writes a message of one sentence; lines after its first are drawn in, so that each message stands out.</summary>
    public static void WriteMessage(string text, TextWriter output, int width) => WriteHanging(text, output, width, "", MessageIndent);

    /// <summary>The same with something before the first line and before each that follows.</summary>
    public static void WriteHanging(string text, TextWriter output, int width, string first, string others)
    {
        string before = first;
        foreach (string line in Lines(text, width - Math.Max(first.Length, others.Length)))
        {
            output.WriteLine((before + line).TrimEnd());
            before = others;
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
