using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;
using LinkMargin.Files.Tables;

namespace LinkMargin.Files.Tests.Measured;

/// <summary>One receiver and one beacon position of <c>reference/open-hall-ble.csv</c>, which names the source.</summary>
/// <param name="Set">1 or 2: the date.</param>
/// <param name="Sensor">The receiver.</param>
/// <param name="Receiver">Where the receiver is, metres, as published.</param>
/// <param name="Beacon">Where the beacon is, metres, as published.</param>
/// <param name="MeanDbm">Mean over time of the levels in dBm.</param>
/// <param name="SpreadDb">Standard deviation over time of the levels, dB.</param>
internal sealed record HallMeasurement(int Set, string Sensor, Point3 Receiver, Point3 Beacon, double MeanDbm, double SpreadDb);

/// <summary>
/// A measured hall written as a house file. What the source states: the outline, six columns and every position. What it does not
/// state was assumed as below before any level was computed, and has not been changed since:
/// the ceiling is at 3.5 m; the building is a concrete frame with hollow clay bricks between (common practice for such halls),
/// so the columns are solid concrete from floor to ceiling, the outer walls are <c>brick-clay-hollow</c> without windows or
/// doors, and a <c>concrete-slab-200</c> with another storey lies above; below is the ground. Desks and people are left to
/// the absorber that every room gets. No body stands at either end.
/// </summary>
internal static class OpenHall
{
    /// <summary>
    /// Three receivers are published inside a column or a wall. They are put in front of the nearest face, as far as a small
    /// device in its housing stands off: an assumption, like those above.
    /// </summary>
    private const double StandOffMetres = 0.05;

    private const double WidthMetres = 20.66, DepthMetres = 17.64;

    private static readonly double[][] Columns =
    [
        [6.39, 5.59, 7.07, 6.30],
        [6.39, 11.60, 7.07, 12.28],
        [12.37, 5.59, 13.05, 6.33],
        [12.37, 11.60, 13.05, 12.31],
        [17.76, 5.56, 18.82, 6.75],
        [18.09, 11.60, 18.82, 12.28],
    ];

    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;

    public static IReadOnlyList<HallMeasurement> Measurements { get; } = ReadMeasurements();

    /// <summary>The hall with a spot at each receiver and a seat, whose player is left out, at each beacon position.</summary>
    public static House Read(MaterialTables tables)
    {
        HouseParseResult parsed = HouseFile.Parse(Text(), "hall.yaml", tables);
        Assert.DoesNotContain(parsed.Problems, problem => problem.Severity == Files.Problems.Severity.Error);
        return parsed.House!;
    }

    public static string SeatName(Point3 beacon) => string.Create(Invariant, $"beacon {beacon.X} {beacon.Y} {beacon.Z}");

    private static string Text()
    {
        string outline = string.Create(Invariant, $"corner: [0, 0], size: [{WidthMetres}, {DepthMetres}]");
        IEnumerable<string> columns = Columns.Select((box, i) => string.Create(Invariant,
            $"  - {{name: column {i + 1}, level: hall, box: [{box[0]}, {box[1]}, {box[2]}, {box[3]}], to: 3.5, material: concrete}}"));
        IEnumerable<string> spots = Measurements.Select(m => (m.Sensor, At: InFrontOf(m.Receiver))).Distinct().Select(m =>
            string.Create(Invariant, $"  - {{name: {m.Sensor}, level: hall, at: [{m.At.X}, {m.At.Y}, {m.At.Z}]}}"));
        IEnumerable<string> seats = Measurements.Select(m => m.Beacon).Distinct().Select(beacon => (Name: SeatName(beacon), At: InFrontOf(beacon))).Select(m =>
            string.Create(Invariant, $"  - {{name: {m.Name}, level: hall, at: [{m.At.X}, {m.At.Y}], hands: {m.At.Z}}}"));
        return $$"""
            house: open hall
            units: m
            levels:
              - name: hall
                height: 3.5
                outer: brick-clay-hollow
                rooms:
                  - {name: hall, {{outline}}}
                above:
                  build-up: concrete-slab-200
              - name: storey above
                height: 3.5
                outer: brick-clay-hollow
                rooms:
                  - {name: above, {{outline}}}
            fixtures:
            {{string.Join('\n', columns)}}
            spots:
            {{string.Join('\n', spots)}}
            seats:
            {{string.Join('\n', seats)}}
            """;
    }

    /// <summary>A published position, moved in front of the nearest face where it lies inside a column or on the hall's edge.</summary>
    private static Point3 InFrontOf(Point3 place)
    {
        double x = Math.Clamp(place.X, StandOffMetres, WidthMetres - StandOffMetres);
        double y = Math.Clamp(place.Y, StandOffMetres, DepthMetres - StandOffMetres);
        foreach (double[] box in Columns)
        {
            double west = x - box[0], east = box[2] - x, south = y - box[1], north = box[3] - y;
            double nearest = new[] { west, east, south, north }.Min();
            if (nearest < 0)
            {
                continue;
            }

            (x, y) = nearest == west ? (box[0] - StandOffMetres, y)
                : nearest == east ? (box[2] + StandOffMetres, y)
                : nearest == south ? (x, box[1] - StandOffMetres)
                : (x, box[3] + StandOffMetres);
        }

        return new Point3(x, y, place.Z);
    }

    private static HallMeasurement[] ReadMeasurements()
    {
        string[][] rows =
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "reference", "open-hall-ble.csv"))
                .Where(line => line.Length > 0 && line[0] != '#')
                .Select(line => line.Split(',')),
        ];
        int Column(string name) => Array.IndexOf(rows[0], name);
        int set = Column("set"), sensor = Column("sensor"), mean = Column("mean_dbm"), spread = Column("sd_db");
        int[] receiver = [Column("rx_x"), Column("rx_y"), Column("rx_z")], beacon = [Column("tx_x"), Column("tx_y"), Column("tx_z")];
        double Number(string[] row, int column) => double.Parse(row[column], NumberStyles.Float, Invariant);
        Point3 Place(string[] row, int[] at) => new(Number(row, at[0]), Number(row, at[1]), Number(row, at[2]));
        return
        [
            .. rows.Skip(1).Select(row => new HallMeasurement(
                int.Parse(row[set], Invariant), row[sensor], Place(row, receiver), Place(row, beacon), Number(row, mean), Number(row, spread))),
        ];
    }
}
