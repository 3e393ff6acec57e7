namespace LinkMargin.Files.Readings;

/// <summary>The columns that place one end of a reading by coordinates.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="X">East on the plan.</param>
/// <param name="Y">North on the plan.</param>
/// <param name="Height">Over the level's floor.</param>
internal sealed record ReadingPlaceColumns(ReadingColumn Level, ReadingColumn X, ReadingColumn Y, ReadingColumn Height)
{
    /// <summary>All four.</summary>
    public IReadOnlyList<ReadingColumn> All => [Level, X, Y, Height];

    /// <summary>Those of one end.</summary>
    public static ReadingPlaceColumns Of(ReadingColumn end) => new(
        new ReadingColumn($"{end.Heading} level", "the name of the level it was on"),
        new ReadingColumn($"{end.Heading} x", "where on the plan, east") { IsLength = true },
        new ReadingColumn($"{end.Heading} y", "where on the plan, north") { IsLength = true },
        new ReadingColumn($"{end.Heading} height", "how high over the floor") { IsLength = true });
}
