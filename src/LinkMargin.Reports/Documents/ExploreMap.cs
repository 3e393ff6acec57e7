using System.Buffers.Binary;
using System.Text.Encodings.Web;
using System.Text.Json;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Reports.Layout;

namespace LinkMargin.Reports.Documents;

/// <summary>Maps of all spots and levels with their values, for a page where a reader selects one and points at places.</summary>
/// <param name="House">The house.</param>
/// <param name="Fields">The margin to count on of each spot on each level.</param>
/// <param name="Colours">The colours with the lowest margin of each, lowest first.</param>
/// <param name="RequiredDb">The margin that most seats require, dB.</param>
/// <param name="Chosen">The spot shown first.</param>
/// <param name="InFeet">Whether places are shown in feet.</param>
internal sealed record ExploreMap(
    House House, IReadOnlyList<Field> Fields, IReadOnlyList<MarginColour> Colours, double RequiredDb, Spot Chosen, bool InFeet)
{
    /// <summary>Whether a seat passes at a spot; null if the seat does not play there.</summary>
    public required Func<Spot, Seat, bool?> Passes { get; init; }

    // The value of a cell that was not computed; no margin is this low.
    private const short None = short.MinValue;

    private const double GreatestDb = 3000;

    /// <summary>
    /// The data as JSON for embedding in a page. Every character that could start or end markup is escaped, whatever the names in
    /// the house.
    /// </summary>
    public string ToJson()
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default }))
        {
            json.WriteStartObject();
            json.WriteBoolean("inFeet", InFeet);
            json.WriteNumber("requiredDb", RequiredDb);
            json.WriteStartArray("colours");
            foreach (MarginColour colour in Colours)
            {
                json.WriteStartArray();
                json.WriteNumberValue(colour.FromDb);
                json.WriteStringValue(colour.Hex);
                json.WriteEndArray();
            }

            json.WriteEndArray();
            WriteSpots(json);
            WriteLevels(json);
            WriteFields(json);
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(bytes.ToArray());
    }

    private void WriteSpots(Utf8JsonWriter json)
    {
        json.WriteNumber("spot", Math.Max(0, House.Spots.ToList().FindIndex(spot => spot.Name == Chosen.Name)));
        json.WriteNumber("level", Chosen.LevelIndex);
        json.WriteStartArray("spots");
        foreach (Spot spot in House.Spots)
        {
            json.WriteStartObject();
            json.WriteString("name", spot.Name);
            json.WriteNumber("level", spot.LevelIndex);
            WritePoint(json, "at", spot.Plan);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void WriteLevels(Utf8JsonWriter json)
    {
        json.WriteStartArray("levels");
        for (int i = 0; i < House.Levels.Count; i++)
        {
            Level level = House.Levels[i];
            json.WriteStartObject();
            json.WriteString("name", level.Name);
            json.WriteStartArray("walls");
            foreach (Wall wall in level.Walls)
            {
                json.WriteStartObject();
                WritePoint(json, "from", wall.Start);
                WritePoint(json, "to", wall.End);
                json.WriteNumber("thick", Rounded(2 * wall.HalfThicknessMetres));
                json.WriteBoolean("full", wall.BaseMetres <= 0 && wall.TopMetres >= level.HeightMetres);
                json.WriteStartArray("openings");
                foreach (Opening opening in wall.Openings)
                {
                    json.WriteStartArray();
                    json.WriteNumberValue(Rounded(opening.OffsetMetres));
                    json.WriteNumberValue(Rounded(opening.WidthMetres));
                    json.WriteStringValue(opening.Kind == OpeningKind.Window ? "window" : opening.Filling is null ? "open" : "door");
                    json.WriteEndArray();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("seats");
            foreach (Seat seat in House.Seats.Where(seat => seat.LevelIndex == i))
            {
                json.WriteStartObject();
                json.WriteString("name", seat.Name);
                WritePoint(json, "at", seat.Plan);
                json.WriteNumber("requiredDb", seat.RequiredDb);
                json.WriteStartArray("passes");
                foreach (Spot spot in House.Spots)
                {
                    if (Passes(spot, seat) is bool passes)
                    {
                        json.WriteBooleanValue(passes);
                    }
                    else
                    {
                        json.WriteNullValue();
                    }
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // Values are tenths of a decibel in 16 bits, lowest byte first, rows from south to north.
    private void WriteFields(Utf8JsonWriter json)
    {
        json.WriteStartArray("fields");
        foreach (Field field in Fields)
        {
            Grid grid = field.Grid;
            byte[] values = new byte[2 * grid.Count];
            for (int cell = 0; cell < grid.Count; cell++)
            {
                double margin = field.MarginDb[cell];
                short tenths = double.IsNaN(margin) ? None : (short)Tenths.OfMargin(Math.Clamp(margin, -GreatestDb, GreatestDb));
                BinaryPrimitives.WriteInt16LittleEndian(values.AsSpan(2 * cell), tenths);
            }

            json.WriteStartObject();
            json.WriteNumber("spot", House.Spots.ToList().FindIndex(spot => spot.Name == field.Spot.Name));
            json.WriteNumber("level", field.LevelIndex);
            WritePoint(json, "origin", grid.Origin);
            json.WriteNumber("cell", grid.CellMetres);
            json.WriteNumber("columns", grid.Columns);
            json.WriteNumber("rows", grid.Rows);
            json.WriteString("tenths", Convert.ToBase64String(values));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WritePoint(Utf8JsonWriter json, string name, Point2 point)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(Rounded(point.X));
        json.WriteNumberValue(Rounded(point.Y));
        json.WriteEndArray();
    }

    // A millimetre is finer than a screen can show.
    private static double Rounded(double metres) => Math.Round(metres, 3);
}
