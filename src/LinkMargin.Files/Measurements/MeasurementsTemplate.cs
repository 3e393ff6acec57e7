using System.Globalization;
using CsvHelper;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Measurements;

/// <summary>
/// A file of readings to fill in: a line for each spot and seat of a house, without a level. Lines that stay without one
/// are omitted when it is read.
/// </summary>
public static class MeasurementsTemplate
{
    /// <summary>What stands under <c>device</c>, to be changed into a name.</summary>
    public const string ExampleDevice = "phone";

    /// <summary>Writes it, in UTF-8; lines end with a line feed.</summary>
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
