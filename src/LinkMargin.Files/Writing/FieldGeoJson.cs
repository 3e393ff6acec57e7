using System.Text.Encodings.Web;
using System.Text.Json;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Files.Writing;

/// <summary>
/// A field as GeoJSON (RFC 7946): one square polygon for each computed cell. GeoJSON coordinates are longitude and latitude,
/// which a house does not have, so a foreign member says what they are here.
/// </summary>
public static class FieldGeoJson
{
    /// <summary>Explains the coordinates.</summary>
    public const string CoordinatesAre =
        "plan metres of the house, x to the east, y to the north; not longitude and latitude";

    // A micrometre and 0.0001 dB: far below any effect, and without the extra digits of doubles.
    private const int MetreDecimals = 6;
    private const int DecibelDecimals = 4;

    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a field, cell 0 first.</summary>
    public static void Write(House house, Field field, Field atConfidence, Stream output)
    {
        ArgumentNullException.ThrowIfNull(atConfidence);
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(field);
        string level = house.Levels[field.LevelIndex].Name;
        using var json = new Utf8JsonWriter(output, Options);
        json.WriteStartObject();
        json.WriteString("type", "FeatureCollection");
        json.WriteString(GeneratorMark.JsonMember, GeneratorMark.Name);
        json.WriteString("form", "linkmargin/field/1");
        json.WriteString("coordinatesAre", CoordinatesAre);
        json.WriteString("house", house.Name);
        json.WriteNumber("cellM", Rounded(field.Grid.CellMetres, MetreDecimals));
        json.WriteNumber("handsM", Rounded(field.HandsMetres, MetreDecimals));
        json.WriteStartArray("features");
        foreach (ComputedCell cell in ComputedCell.Of(field, atConfidence))
        {
            WriteFeature(json, field, level, cell);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteFeature(Utf8JsonWriter json, Field field, string level, ComputedCell cell)
    {
        json.WriteStartObject();
        json.WriteString("type", "Feature");
        json.WriteStartObject("geometry");
        json.WriteString("type", "Polygon");
        json.WriteStartArray("coordinates");
        json.WriteStartArray();
        double half = field.Grid.CellMetres / 2;
        WriteCorner(json, cell, -half, -half);
        WriteCorner(json, cell, half, -half);
        WriteCorner(json, cell, half, half);
        WriteCorner(json, cell, -half, half);
        WriteCorner(json, cell, -half, -half); // a ring ends at its first corner
        json.WriteEndArray();
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteString("spot", field.Spot.Name);
        json.WriteString("level", level);
        json.WriteNumber("medianDb", Rounded(cell.MedianDb, DecibelDecimals));
        json.WriteNumber("marginAtConfidenceDb", Rounded(cell.MarginAtConfidenceDb, DecibelDecimals));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteCorner(Utf8JsonWriter json, ComputedCell cell, double dx, double dy)
    {
        json.WriteStartArray();
        json.WriteNumberValue(Rounded(cell.Centre.X + dx, MetreDecimals));
        json.WriteNumberValue(Rounded(cell.Centre.Y + dy, MetreDecimals));
        json.WriteEndArray();
    }

    private static double Rounded(double value, int decimals) => Math.Round(value, decimals) + 0.0; // −0 becomes 0
}
