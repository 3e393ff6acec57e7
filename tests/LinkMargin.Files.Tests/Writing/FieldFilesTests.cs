using System.Globalization;
using System.Text;
using System.Text.Json;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Writing;

namespace LinkMargin.Files.Tests.Writing;

public sealed class FieldFilesTests
{
    private static readonly Spot Spot = new("rack, \"big\"", 0, new Point2(0, 0), 1);

    private static readonly Radio Radio = new("radio", PowerLevel.FromDbm(0), 0, PowerLevel.FromDbm(-90), 0, 0, "made for tests");

    private static readonly House House = new("Test House", [new Level("den", 0, 2.4)], [], [Spot], [], Radio, Radio);

    // Two columns, two rows, from (1, 2), a third of a metre each; one cell is not computed.
    private static readonly Field Field = new(Spot, 0, 0.7, new Grid(new Point2(1, 2), 1 / 3.0, 2, 2), [10.25, double.NaN, -3.123456, 0]);

    private static readonly Field AtConfidence = Field with { MarginDb = [3.25, double.NaN, -9.5, -7] };

    [Fact]
    public void A_table_has_a_row_for_each_computed_cell_in_the_grids_order() => Assert.Equal(
        """"
        spot,level,xM,yM,handsM,medianDb,marginAtConfidenceDb
        "rack, ""big""",den,1.166667,2.166667,0.7,10.25,3.25
        "rack, ""big""",den,1.166667,2.5,0.7,-3.1235,-9.5
        "rack, ""big""",den,1.5,2.5,0.7,0,-7

        """",
        Csv());

    [Fact]
    public void Figures_are_written_the_same_where_the_decimal_point_is_a_comma()
    {
        string csv = Csv(), json = GeoJson();
        CultureInfo before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NumberGroupSeparator) = (",", ".");
        try
        {
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(csv, Csv());
            Assert.Equal(json, GeoJson());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_geojson_has_a_closed_square_for_each_computed_cell_and_says_what_its_coordinates_are()
    {
        using JsonDocument document = JsonDocument.Parse(GeoJson());
        JsonElement root = document.RootElement;

        Assert.Equal("FeatureCollection", root.GetProperty("type").GetString());
        Assert.Contains("not longitude", root.GetProperty("coordinatesAre").GetString(), StringComparison.Ordinal);
        Assert.Equal(3, root.GetProperty("features").GetArrayLength());
        JsonElement first = root.GetProperty("features")[0];
        JsonElement[] ring = [.. first.GetProperty("geometry").GetProperty("coordinates")[0].EnumerateArray()];
        Assert.Equal(5, ring.Length);
        Assert.Equal(ring[0].GetRawText(), ring[4].GetRawText());
        Assert.Equal("[1,2]", ring[0].GetRawText());
        Assert.Equal("[1.333333,2.333333]", ring[2].GetRawText());
        Assert.Equal(10.25, first.GetProperty("properties").GetProperty("medianDb").GetDouble());
        Assert.Equal(3.25, first.GetProperty("properties").GetProperty("marginAtConfidenceDb").GetDouble());
        Assert.Equal("den", first.GetProperty("properties").GetProperty("level").GetString());
        Assert.Equal(Spot.Name, first.GetProperty("properties").GetProperty("spot").GetString());
    }

    private static string Csv() => Written(stream => FieldCsv.Write(House, Field, AtConfidence, stream));

    private static string GeoJson() => Written(stream => FieldGeoJson.Write(House, Field, AtConfidence, stream));

    private static string Written(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
