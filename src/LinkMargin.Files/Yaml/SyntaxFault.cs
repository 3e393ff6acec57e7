using YamlDotNet.Core;
using Mark = LinkMargin.Files.Problems.Mark;

namespace LinkMargin.Files.Yaml;

/// <summary>Says in our words what the YAML parser stumbled over.</summary>
internal static class SyntaxFault
{
    /// <summary>Part of the parser's message, and what to tell the person; the first that fits counts.</summary>
    private static readonly (string Part, string Sentence)[] Sentences =
    [
        (" tab", Tab),
        ("quoted scalar, found unexpected end", "a quote opened here is never closed; close it, or put the whole text in the other kind of quotes."),
        ("expected hexadecimal", BadEscape),
        ("escape", BadEscape),
        ("surrogates", BadEscape),
        ("expected ',' or ']'", "a list in square brackets is not closed, or a comma is missing, before here."),
        ("expected ',' or '}'", "a group in curly brackets is not closed, or a comma is missing, before here."),
        ("flow sequence", "a list in square brackets is not closed, or a comma is missing, before here."),
        ("invalid mapping", "a second ': ' stands in this line; put the value in quotes, or start a new line."),
        ("expected ':'", "a key is not followed by ': ' here; write 'key: value'."),
        ("expected key", Indentation),
        ("'-' indicator", "a list item does not line up with the '-' of the items above; give them the same indentation."),
        ("cannot start any token", "this character cannot begin a value; put the value in quotes."),
        ("expected <document start>", Indentation),
        ("node content", "a value is missing here, or a comma stands where a value is needed."),
        ("block scalar", "a text block (| or >) is not indented as it must be here; put the text on one line in quotes."),
        ("directive", "a line that begins with % is not used here; remove it, or put the value in quotes."),
        ("anchor", "a text that begins with & or * must stand in quotes."),
        ("tag", "a text that begins with ! must stand in quotes."),
    ];

    private const string Tab = "a tab is used for indentation here; use blanks, two for each step.";

    private const string BadEscape = "a backslash in double quotes is not followed by anything it can stand before; use single quotes.";

    private const string Indentation = "this line does not line up with the ones above; check its indentation and the brackets and colons before it.";

    private const string Other = "this is not YAML as it stands; check the indentation, colons, quotes and brackets here and in the line above.";

    /// <summary>Where it stumbled; the parser counts from 0 where it has read nothing.</summary>
    public static Mark MarkOf(YamlException fault) => new(Math.Max(1, (int)fault.Start.Line), Math.Max(1, (int)fault.Start.Column));

    /// <summary>What is wrong there and what to do.</summary>
    public static string Sentence(YamlException fault, string text)
    {
        if (HasLeadingTab(text, MarkOf(fault).Line) || HasLeadingTab(text, (int)fault.End.Line))
        {
            return Tab;
        }

        foreach ((string part, string sentence) in Sentences)
        {
            if (fault.Message.Contains(part, StringComparison.Ordinal))
            {
                return sentence;
            }
        }

        return Other;
    }

    private static bool HasLeadingTab(string text, int line)
    {
        string? found = text.Split('\n').ElementAtOrDefault(line - 1);
        return found is not null && found.TakeWhile(char.IsWhiteSpace).Contains('\t');
    }
}
