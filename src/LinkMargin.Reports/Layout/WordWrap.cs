using System.Globalization;
using System.Text;

namespace LinkMargin.Reports.Layout;

/// <summary>
/// Breaks text into lines at spaces. A word longer than a line, such as a file name, is kept whole in running text and
/// cut in a table.
/// </summary>
internal static class WordWrap
{
    /// <summary>The indentation of a message after its first line.</summary>
    public const string MessageIndent = "    ";

    /// <summary>The number of columns a text takes on a line.</summary>
    public static int WidthOf(string text) => new StringInfo(text).LengthInTextElements;

    /// <summary>The text in lines of at most the given width; existing line ends are kept.</summary>
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

    /// <summary>Writes text in lines of at most the given width.</summary>
    public static void Write(string text, TextWriter output, int width) => WriteHanging(text, output, width, "", "");

    /// <summary>Writes a message of one sentence; lines after the first are indented, so that each message stands out.</summary>
    public static void WriteMessage(string text, TextWriter output, int width) => WriteHanging(text, output, width, "", MessageIndent);

    /// <summary>The same with a prefix for the first line and one for the following lines.</summary>
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
