using System.Text;
using System.Text.RegularExpressions;
using LinkMargin.Shared;

namespace LinkMargin.Files.Writing;

/// <summary>
/// How the program knows its own output again, so that it may replace it. House files carry no mark on purpose: somebody
/// edits them, and then they are nobody else's to replace.
/// </summary>
public static partial class GeneratorMark
{
    /// <summary>First line of a text in which <c>#</c> begins a comment; more may follow on the line.</summary>
    public const string CommentLine = "# Written by LinkMargin";

    /// <summary>Name of the member near the top of a JSON or GeoJSON document.</summary>
    public const string JsonMember = "generator";

    /// <summary>Value of that member, and text of the PNG entry.</summary>
    public const string Name = PngMark.Text;

    /// <summary>How much of a file is looked at, bytes.</summary>
    internal const int HeadBytes = 4096;

    /// <summary>Whether a file that begins like this was written by this program.</summary>
    public static bool IsOn(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith(PngMark.Signature))
        {
            return PngMark.IsOn(head);
        }

        string text = Encoding.UTF8.GetString(head);
        return text.TrimStart('\uFEFF').StartsWith(CommentLine, StringComparison.Ordinal)
            || text.StartsWith(FieldCsv.HeadingLine, StringComparison.Ordinal)
            || text.StartsWith(FieldCsv.FormerHeadingLine, StringComparison.Ordinal)
            || JsonMark().IsMatch(text);
    }

    [GeneratedRegex("\"(generator\"\\s*:\\s*\"|\\$comment\"\\s*:\\s*\"Written by )LinkMargin\"", RegexOptions.CultureInvariant)]
    private static partial Regex JsonMark();
}
