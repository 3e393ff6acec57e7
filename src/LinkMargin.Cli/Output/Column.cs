namespace LinkMargin.Cli.Output;

/// <summary>One column of a <see cref="TextTable"/>.</summary>
/// <param name="Heading">What stands above it; may hold line ends.</param>
/// <param name="Align">Which side its cells stand at; cells at the right are figures, which are never broken.</param>
internal sealed record Column(string Heading, Align Align = Align.Left)
{
    /// <summary>The heading where the table is short of room; null where there is no shorter one.</summary>
    public string? ShortHeading { get; init; }

    /// <summary>Whether its cells are running text, which is wrapped before anything else is.</summary>
    public bool Wraps { get; init; }

    /// <summary>Whether its cells are never broken, such as the names of files.</summary>
    public bool Whole { get; init; }
}

/// <summary>One cell of a <see cref="TextTable"/>.</summary>
/// <param name="Text">What stands in it; may hold line ends.</param>
/// <param name="IsWords">Whether it is words among figures, which may be wrapped.</param>
internal readonly record struct Cell(string Text, bool IsWords)
{
    /// <summary>Words in a column of figures.</summary>
    public static Cell Words(string text) => new(text, true);

    /// <summary>What a column usually holds.</summary>
    public static implicit operator Cell(string text) => new(text, false);
}
