using System.Globalization;
using CsvHelper;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Measurements;

/// <summary>
/// A measurements file to fill in: one line for each spot and seat of a house, without a level. Lines left without a level are
/// ignored when it is read.
/// </summary>
public static class MeasurementsTemplate
{
    /// <summary>The text under <c>device</c>, to be replaced by a name.</summary>
    public const string ExampleDevice = "phone";

    /// <summary>Writes it in UTF-8 with line feeds as line ends.</summary>
    public static void Write(House house, Stream output)
    {
        ArgumentNullException.ThrowIfNull(house);
        CsvWriterOptions options = new() { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };
        using var csv = CsvWriter.Create(output, options, leaveOpen: true);
        csv.WriteHeader([.. MeasurementHeader.TemplateOrder.Select(column => column.Heading)]);
        foreach (Spot spot in house.Spots)
        {
            foreach (Seat seat in house.Seats)
            {
                csv.WriteField(SpreadsheetText.Written(spot.Name));
                csv.WriteField(SpreadsheetText.Written(seat.Name));
                csv.WriteField("");
                csv.WriteField(ExampleDevice);
                csv.EndRecord();
            }
        }
    }
}
