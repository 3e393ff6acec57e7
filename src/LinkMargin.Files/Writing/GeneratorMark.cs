using System.Text;
using System.Text.RegularExpressions;
using LinkMargin.Files.Yaml;
using LinkMargin.Shared;

namespace LinkMargin.Files.Writing;

/// <summary>Who wrote a file.</summary>
internal enum Author
{
    /// <summary>This program, unchanged since.</summary>
    Program,

    /// <summary>This program, but a person may have changed it since.</summary>
    ProgramThenPerson,

    /// <summary>Another author, as far as is known.</summary>
    Other,
}

/// <summary>
/// How the program recognises its own output, so that it may replace it. A text that people may edit carries a checksum, so that
/// an edited one is kept; one without a checksum, from an older version, counts as edited. House files and measurement
/// templates carry no mark on purpose: they are meant to be edited, and must not be replaced after that.
/// </summary>
public static partial class GeneratorMark
{
    /// <summary>First line of a text in which <c>#</c> starts a comment; more may follow on the line.</summary>
    public const string CommentLine = "# Written by LinkMargin";

    private const string ChecksumLine = "# Checksum of the lines above, by which a change is found: ";

    /// <summary>Name of the member near the top of a JSON or GeoJSON document.</summary>
    public const string JsonMember = "generator";

    /// <summary>Value of that member, and text of the PNG entry.</summary>
    public const string Name = PngMark.Text;

    // The mark that report writers put near the top of an HTML page and a PDF.
    private static readonly string HtmlMark = $"<meta name=\"generator\" content=\"{Name}\">";

    private static ReadOnlySpan<byte> PdfMark => "/Creator (LinkMargin)"u8;

    /// <summary>How much of a file is searched for a mark, bytes.</summary>
    internal const int HeadBytes = 4096;

    /// <summary>A text that starts with <see cref="CommentLine"/>, followed by a checksum that reveals changes.</summary>
    /// <param name="text">The text; ends with a line feed.</param>
    public static string Sealed(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return FormattableString.Invariant($"{text}{ChecksumLine}{Checksum(Encoding.UTF8.GetBytes(text)):x16}\n");
    }

    /// <summary>Who wrote a file.</summary>
    /// <param name="file">The file, positioned at its start.</param>
    internal static Author AuthorOf(Stream file)
    {
        byte[] bytes = new byte[HeadBytes];
        int count = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        ReadOnlySpan<byte> head = bytes.AsSpan(0, count);
        if (head.StartsWith(PngMark.Signature))
        {
            return PngMark.IsOn(head) ? Author.Program : Author.Other;
        }

        if (head.StartsWith("%PDF-"u8))
        {
            return head.IndexOf(PdfMark) >= 0 ? Author.Program : Author.Other;
        }

        string text = Encoding.UTF8.GetString(head);
        if (text.TrimStart('\uFEFF').StartsWith(CommentLine, StringComparison.Ordinal))
        {
            return IsSealWhole(head, file) ? Author.Program : Author.ProgramThenPerson;
        }

        return text.Contains(HtmlMark, StringComparison.Ordinal)
            || text.StartsWith(RunsCsv.HeadingLine, StringComparison.Ordinal)
            || LinksCsv.HeadingLines.Any(line => text.StartsWith(line, StringComparison.Ordinal))
            || text.StartsWith(FieldCsv.HeadingLine, StringComparison.Ordinal)
            || FieldCsv.FormerHeadingLines.Any(line => text.StartsWith(line, StringComparison.Ordinal))
            || JsonMark().IsMatch(text)
            ? Author.Program
            : Author.Other;
    }

    /// <summary>FNV-1a with 64 bits (Fowler, Noll, Vo): detects edits by hand; it is not meant for security.</summary>
    internal static ulong Checksum(ReadOnlySpan<byte> bytes)
    {
        const ulong OffsetBasis = 14695981039346656037, Prime = 1099511628211;
        ulong sum = OffsetBasis;
        foreach (byte one in bytes)
        {
            sum = unchecked((sum ^ one) * Prime);
        }

        return sum;
    }

    // Every file with a checksum is small enough to be read as input, so a larger one was changed.
    private static bool IsSealWhole(ReadOnlySpan<byte> head, Stream rest)
    {
        byte[] buffer = new byte[YamlLimits.Bytes + 1];
        head.CopyTo(buffer);
        int count = head.Length + rest.ReadAtLeast(buffer.AsSpan(head.Length), buffer.Length - head.Length, throwOnEndOfStream: false);
        ReadOnlySpan<byte> all = buffer.AsSpan(0, count);
        if (count == buffer.Length || !all.EndsWith("\n"u8))
        {
            return false;
        }

        int lastLine = all[..^1].LastIndexOf((byte)'\n') + 1;
        string expected = FormattableString.Invariant($"{ChecksumLine}{Checksum(all[..lastLine]):x16}\n");
        return all[lastLine..].SequenceEqual(Encoding.UTF8.GetBytes(expected));
    }

    [GeneratedRegex("\"(generator\"\\s*:\\s*\"|\\$comment\"\\s*:\\s*\"Written by )LinkMargin\"", RegexOptions.CultureInvariant)]
    private static partial Regex JsonMark();
}
