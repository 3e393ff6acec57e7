using YamlDotNet.Core;
using Mark = LinkMargin.Files.Problems.Mark;

namespace LinkMargin.Files.Yaml;

/// <summary>Explains errors of the YAML parser in our own words.</summary>
internal static class SyntaxFault
{
    /// <summary>Part of the parser's message, and our sentence for it; the first match counts.</summary>
    private static readonly (string Part, string Sentence)[] Sentences =
    [
        (PlacedParser.Unworded, "a bracket opened before this point is not closed, or a key inside brackets is split over two lines; close the bracket, or write the key on one line"),
        ("quoted scalar, found unexpected end", "a quote opened here is never closed; close it, or put the whole text in the other kind of quotes"),
        ("expected hexadecimal", BadEscape),
        ("escape", BadEscape),
        ("surrogates", BadEscape),
        ("expected ',' or ']'", "a list in square brackets is not closed, or a comma is missing, before this point"),
        ("expected ',' or '}'", "a group in curly brackets is not closed, or a comma is missing, before this point"),
        ("flow sequence", "a list in square brackets is not closed, or a comma is missing, before this point"),
        ("invalid mapping", "this line has a second ': '; put the value in quotes, or start a new line"),
        ("expected ':'", "a key is not followed by ': ' here; write 'key: value'"),
        ("expected key", Indentation),
        ("'-' indicator", "a list item does not line up with the '-' of the items above; give them the same indentation"),
        ("cannot start any token", "this character cannot begin a value; put the value in quotes"),
        ("expected <document start>", Indentation),
        ("node content", "a value is missing here, or there is a comma where a value is needed"),
        ("block scalar", "this text block (| or >) is not indented correctly; put the text on one line in quotes"),
        ("directive", "a line that begins with % is not used here; remove it, or put the value in quotes"),
        ("anchor", "a text that begins with & or * must be in quotes"),
        ("tag", "a text that begins with ! must be in quotes"),
    ];

    private const string Tab = "a tab is used for indentation here; use spaces, two for each step";

    private const string BadEscape = "a backslash in double quotes is not followed by a character it can escape; use single quotes";

    private const string Indentation = "this line does not line up with the ones above; check its indentation and the brackets and colons before it";

    private const string Other = "this is not valid YAML; check the indentation, colons, quotes and brackets here and in the line above";

    /// <summary>The position of the error and what to do.</summary>
    public static (Mark Mark, string Sentence) Explain(YamlException fault, string text)
    {
        // The parser's position is 0 if it has read nothing.
        Mark mark = new(Math.Max(1, (int)fault.Start.Line), Math.Max(1, (int)fault.Start.Column));
        if (fault.Message.Contains(" tab", StringComparison.Ordinal))
        {
            return (LeadingTab(text, mark.Line) ?? mark, Tab);
        }

        foreach ((string part, string sentence) in Sentences)
        {
            if (fault.Message.Contains(part, StringComparison.Ordinal))
            {
                return (mark, sentence);
            }
        }

        return (mark, Other);
    }

    /// <summary>The first tab in the indentation of a line; the parser only gives the start of the block.</summary>
    private static Mark? LeadingTab(string text, int fromLine)
    {
        int line = 0;
        foreach (ReadOnlySpan<char> found in text.AsSpan().EnumerateLines())
        {
            int tab = found.IndexOf('\t');
            if (++line >= fromLine && tab >= 0 && found[..tab].IsWhiteSpace())
            {
                return new Mark(line, tab + 1);
            }
        }

        return null;
    }
}
