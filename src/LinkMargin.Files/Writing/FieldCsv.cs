using System.Globalization;
using CsvHelper;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Writing;

/// <summary>A field as comma-separated values: a heading row, then a row for each cell that was computed.</summary>
public static class FieldCsv
{
    // A micrometre, and a tenth of a thousandth of a decibel: far below any effect, and without the digits doubles add.
    private const int MetreDecimals = 6;
    private const int DecibelDecimals = 4;

    /// <summary>The headings; each carries its unit.</summary>
    public static IReadOnlyList<string> Headings { get; } = ["spot", "level", "xM", "yM", "handsM", "medianDb", "marginAtConfidenceDb"];

    /// <summary>
    /// The first line, by which the program knows its own file again: a mark of its own would be a row that no reader of
    /// such files expects.
    /// </summary>
    internal static string HeadingLine { get; } = string.Join(',', Headings) + "\n";

    /// <summary>The first lines of files that older versions wrote.</summary>
    internal static IReadOnlyList<string> FormerHeadingLines { get; } =
        ["spot,level,xM,yM,handsM,medianDb,countedDb\n", "spot,level,xM,yM,handsM,marginDb,countedDb\n"];

    /// <summary>Writes a field and the margin to count on, cell 0 first, in UTF-8; lines end with a line feed.</summary>
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

        // What is 0 once rounded is written 0, and not −0.
        void WriteNumber(double value, int decimals) =>
            csv.WriteField(Math.Round(value, decimals) + 0.0, decimals == MetreDecimals ? "0.######" : "0.####");
    }
}

/// <summary>A cell of a field that was computed.</summary>
/// <param name="Centre">Its centre, metres.</param>
/// <param name="MedianDb">The median margin there, dB.</param>
/// <param name="MarginAtConfidenceDb">The margin to count on there, dB.</param>
internal readonly record struct ComputedCell(Point2 Centre, double MedianDb, double MarginAtConfidenceDb)
{
    /// <summary>All of a field, cell 0 first.</summary>
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
