using System.Globalization;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;

namespace LinkMargin.Files.Yaml;

/// <summary>
/// Reads single values from nodes. If a value is not valid, each method records an error and returns null. The label is the key
/// or the position in a list; the message starts with it.
/// </summary>
internal static class ValueReader
{
    /// <summary>Greatest length of a name; it must fit into a table and a drawing.</summary>
    public const int LongestName = 60;

    /// <summary>Greatest length of a text that is not a name, such as a source.</summary>
    public const int LongestText = 2000;

    /// <summary>A name: text on one line, not too long, in Unicode normalisation form C.</summary>
    public static string? Name(Source source, Node node, string label, int longest = LongestName)
    {
        if (Text(source, node, label) is not { } text)
        {
            return null;
        }

        if (NameText.Fault(text) is { } fault)
        {
            source.Error(node.Mark, $"{label}: {Quote.Of(text)} {fault}");
            return null;
        }

        if (text.Length > longest)
        {
            source.Error(node.Mark, string.Create(CultureInfo.InvariantCulture,
                $"{label}: {Quote.Of(text)} is too long for a name; at most {longest} characters are allowed"));
            return null;
        }

        return text;
    }

    /// <summary>A text, trimmed, not empty.</summary>
    public static string? Text(Source source, Node node, string label)
    {
        if (node is not ScalarNode { IsNull: false } scalar)
        {
            source.Error(node.Mark, $"{label}: a word or text is needed, not {node.Kind}");
            return null;
        }

        string text = scalar.Text.Length > LongestText ? scalar.Text.Trim() : NameText.Normal(scalar.Text).Replace("\r\n", "\n", StringComparison.Ordinal);
        if (text.Length is 0 or > LongestText)
        {
            source.Error(node.Mark, text.Length == 0
                ? $"{label}: the text is empty; write something or remove the key"
                : FormattableString.Invariant($"{label}: the text is longer than {LongestText} characters"));
            return null;
        }

        if (NameText.Fault(text, mayHaveLines: true) is { } fault)
        {
            source.Error(node.Mark, $"{label}: {Quote.Of(text)} {fault}");
            return null;
        }

        return text;
    }

    /// <summary>A length in metres inside a range.</summary>
    public static double? Length(Source source, Node node, string label, QuantityRange range) =>
        Measured(source, node, label, range, "a length", text => LengthText.Parse(text, source.BareUnit));

    /// <summary>A number of some kind inside a range.</summary>
    public static double? Number(Source source, Node node, string label, Quantity quantity, QuantityRange range) =>
        Measured(source, node, label, range, quantity.What, quantity.Parse);

    /// <summary>True or false.</summary>
    public static bool? Flag(Source source, Node node, string label)
    {
        switch (node)
        {
            case ScalarNode { IsQuoted: false, Text: "true" or "True" or "TRUE" }:
                return true;
            case ScalarNode { IsQuoted: false, Text: "false" or "False" or "FALSE" }:
                return false;
            default:
                source.Error(node.Mark, $"{label}: write true or false, not {node.Kind}");
                return null;
        }
    }

    /// <summary>One of several words; false, with an error recorded, if it is not one of them.</summary>
    /// <param name="source">The file.</param>
    /// <param name="node">The word.</param>
    /// <param name="label">The start of the message.</param>
    /// <param name="words">The value that each word stands for.</param>
    /// <param name="what">What a word is, such as <c>a material</c>.</param>
    /// <param name="whereListed">Where to find the words if there are many.</param>
    /// <param name="chosen">The value that the word stands for.</param>
    /// <param name="otherwise">Gives advice on a word that is not a misspelling; null if it has none.</param>
    public static bool TryChoose<T>(
        Source source,
        Node node,
        string label,
        IReadOnlyDictionary<string, T> words,
        string what,
        string? whereListed,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out T? chosen,
        Func<string, string?>? otherwise = null)
    {
        chosen = default;
        if (Text(source, node, label) is not { } word)
        {
            return false;
        }

        if (words.TryGetValue(word, out chosen) && chosen is not null)
        {
            return true;
        }

        source.Error(node.Mark,
            $"{label}: {Quote.Of(word)} is not {what}; {source.Advice(word, [.. words.Keys], whereListed, otherwise)}");
        return false;
    }

    /// <summary>A number with its own syntax.</summary>
    public static double? Measured(
        Source source, Node node, string label, QuantityRange range, string what, Func<string, Parsed> parse)
    {
        if (node is not ScalarNode { IsNull: false } scalar)
        {
            source.Error(node.Mark, $"{label}: {what} is needed, {source.Lengths.Allowed(range)}, not {node.Kind}");
            return null;
        }

        Parsed parsed = parse(scalar.Text);
        if (parsed.Fault is { } fault)
        {
            source.Error(node.Mark, $"{label}: {Quote.Of(scalar.Text)} {fault} ({source.Lengths.Allowed(range)} is allowed)");
            return null;
        }

        if (!range.Contains(parsed.Value))
        {
            string value = source.Lengths.Show(range, parsed.Value);
            string shown = scalar.Text.Trim() == value ? "" : $" ({value})";
            source.Error(node.Mark, $"{label}: {Quote.Of(scalar.Text)}{shown} is outside the allowed {source.Lengths.Allowed(range)}");
            return null;
        }

        return parsed.Value;
    }
}
