using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace LinkMargin.Files.Yaml;

/// <summary>
/// The library's parser, with every failure turned into one that knows its place: on some bracket faults the library
/// throws a bare exception of another kind.
/// </summary>
internal sealed class PlacedParser(TextReader text) : IParser
{
    /// <summary>What the fault says when the library has no words for it.</summary>
    public const string Unworded = "flow collection left open, or its key broken over two lines";

    private readonly Scanner scanner = new(text, skipComments: true);
    private Parser? parser;

    /// <inheritdoc/>
    public ParsingEvent? Current => parser?.Current;

    /// <inheritdoc/>
    public bool MoveNext()
    {
        try
        {
            return (parser ??= new Parser(scanner)).MoveNext();
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or OverflowException)
        {
            throw new YamlException(scanner.CurrentPosition, scanner.CurrentPosition, Unworded, e);
        }
    }
}
