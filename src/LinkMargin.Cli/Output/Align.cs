namespace LinkMargin.Cli.Output;

/// <summary>Which side of its column a cell stands at.</summary>
internal enum Align
{
    /// <summary>Words.</summary>
    Left,

    /// <summary>Figures.</summary>
    Right,
}
