using System.Globalization;
using CsvHelper;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Writing;

/// <summary>A field as comma-separated values: a heading row, then a row for each computed cell.</summary>
public static class FieldCsv
{
    // A micrometre and 0.0001 dB: far below any effect, and without the extra digits of doubles.
    private const int MetreDecimals = 6;
    private const int DecibelDecimals = 4;

    /// <summary>The headings; each carries its unit.</summary>
    public static IReadOnlyList<string> Headings { get; } = ["spot", "level", "xM", "yM", "handsM", "medianDb", "marginAtConfidenceDb"];

    /// <summary>
    /// The first line, by which the program recognises its own file: a separate mark would be a row that no reader of
    /// such files expects.
    /// </summary>
    internal static string HeadingLine { get; } = string.Join(',', Headings) + "\n";

    /// <summary>The first lines of files that older versions wrote.</summary>
    internal static IReadOnlyList<string> FormerHeadingLines { get; } =
        ["spot,level,xM,yM,handsM,medianDb,countedDb\n", "spot,level,xM,yM,handsM,marginDb,countedDb\n"];

    /// <summary>Writes the median margin and the margin to count on, cell 0 first, in UTF-8 with line feeds.</summary>
    public static void Write(House house, Field field, Field atConfidence, Stream output)
    {
        ArgumentNullException.ThrowIfNull(atConfidence);
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(field);
        var options = new CsvWriterOptions { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };
        using var csv = CsvWriter.Create(output, options, leaveOpen: true);
        csv.WriteHeader([.. Headings]);
        string level = SpreadsheetText.Written(house.Levels[field.LevelIndex].Name);
        foreach (ComputedCell cell in ComputedCell.Of(field, atConfidence))
        {
            csv.WriteField(SpreadsheetText.Written(field.Spot.Name));
            csv.WriteField(level);
            WriteNumber(cell.Centre.X, MetreDecimals);
            WriteNumber(cell.Centre.Y, MetreDecimals);
            WriteNumber(field.HandsMetres, MetreDecimals);
            WriteNumber(cell.MedianDb, DecibelDecimals);
            WriteNumber(cell.MarginAtConfidenceDb, DecibelDecimals);
            csv.EndRecord();
        }

        // A value that is 0 after rounding is written as 0, not −0.
        void WriteNumber(double value, int decimals) =>
            csv.WriteField(Math.Round(value, decimals) + 0.0, decimals == MetreDecimals ? "0.######" : "0.####");
    }
}

/// <summary>A computed cell of a field.</summary>
/// <param name="Centre">Its centre, metres.</param>
/// <param name="MedianDb">The median margin there, dB.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on there, dB.</param>
internal readonly record struct ComputedCell(Point2 Centre, double MedianDb, double MarginAtConfidenceDb)
{
    /// <summary>All computed cells of a field, cell 0 first.</summary>
    public static IEnumerable<ComputedCell> Of(Field field, Field atConfidence)
    {
        Grid grid = field.Grid;
        for (int cell = 0; cell < grid.Count; cell++)
        {
            if (!double.IsNaN(field.MarginDb[cell]))
            {
                yield return new(grid.CentreOf(cell % grid.Columns, cell / grid.Columns), field.MarginDb[cell], atConfidence.MarginDb[cell]);
            }
        }
    }
}
