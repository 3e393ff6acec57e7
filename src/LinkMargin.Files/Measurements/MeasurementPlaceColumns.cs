namespace LinkMargin.Files.Measurements;

/// <summary>The columns that place one end of a reading by coordinates.</summary>
/// <param name="Level">The level's name.</param>
/// <param name="X">East on the plan.</param>
/// <param name="Y">North on the plan.</param>
/// <param name="Height">Over the level's floor.</param>
internal sealed record MeasurementPlaceColumns(MeasurementColumn Level, MeasurementColumn X, MeasurementColumn Y, MeasurementColumn Height)
{
    /// <summary>All four.</summary>
    public IReadOnlyList<MeasurementColumn> All => [Level, X, Y, Height];

    /// <summary>Those of one end.</summary>
    public static MeasurementPlaceColumns Of(MeasurementColumn end) => new(
        new MeasurementColumn($"{end.Heading} level", "the name of the level it was on"),
        new MeasurementColumn($"{end.Heading} x", "where on the plan, east") { IsLength = true },
        new MeasurementColumn($"{end.Heading} y", "where on the plan, north") { IsLength = true },
        new MeasurementColumn($"{end.Heading} height", "how high over the floor") { IsLength = true });
}
