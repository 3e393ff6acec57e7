namespace LinkMargin.Cli.Output;

/// <summary>One column of a <see cref="TextTable"/>.</summary>
/// <param name="Heading">What stands above it; may hold line ends.</param>
/// <param name="Align">Which side its cells stand at.</param>
internal sealed record Column(string Heading, Align Align = Align.Left)
{
    /// <summary>Whether its cells are wrapped so that the table fits its width.</summary>
    public bool Wraps { get; init; }
}
