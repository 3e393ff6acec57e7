using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>Finds where the ends of measurements were in a house.</summary>
internal sealed class MeasurementPlaces(House house, LengthUnit houseUnit, Source source)
{
    private readonly Dictionary<string, int> levels =
        house.Levels.Select((level, i) => (level.Name, i)).DistinctBy(l => l.Name, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(l => l.Name, l => l.i, StringComparer.OrdinalIgnoreCase);

    private readonly (Point2 Least, Point2 Greatest)?[] extents = [.. house.Levels.Select(ExtentOf)];
    private readonly LengthFormat lengths = new(houseUnit);

    /// <summary>Reads one end of a line; null, with an error recorded, if it cannot be determined.</summary>
    /// <param name="header">The columns.</param>
    /// <param name="line">The line.</param>
    /// <param name="name">The column of its name.</param>
    /// <param name="place">The columns of its coordinates.</param>
    public MeasurementEnd? Read(MeasurementHeader header, IReadOnlyList<CsvCell> line, MeasurementColumn name, MeasurementPlaceColumns place)
    {
        CsvCell? named = header.Find(line, name);
        CsvCell[] written = [.. place.All.Select(column => header.Find(line, column)).OfType<CsvCell>()];
        if (named is { } word)
        {
            if (written.Length > 0)
            {
                source.Error(written[0].Mark, $"{name.Heading}: this line has both the name {Quote.Of(word.Text)} and coordinates; leave one of them empty");
                return null;
            }

            return ByName(word, name);
        }

        if (written.Length == 0)
        {
            source.Error(line[0].Mark, $"{name.Heading}: this line does not say where the {name.Heading} was; write the name of a spot or seat{(header.Has(place.X) ? ", or its coordinates" : "")}");
            return null;
        }

        return ByCoordinates(header, line, name, place);
    }

    private MeasurementEnd? ByName(CsvCell word, MeasurementColumn end)
    {
        Spot? spot = house.Spots.FirstOrDefault(s => s.Name.Equals(word.Text, StringComparison.OrdinalIgnoreCase));
        Seat? seat = house.Seats.FirstOrDefault(s => s.Name.Equals(word.Text, StringComparison.OrdinalIgnoreCase));
        bool isSpot = spot is not null && (seat is null || end == MeasurementColumn.Transmitter);
        if (isSpot)
        {
            return new MeasurementEnd(spot!.Name, spot.LevelIndex, spot.Plan, spot.HeightMetres) { Spot = spot };
        }

        if (seat is not null)
        {
            return new MeasurementEnd(seat.Name, seat.LevelIndex, seat.Plan, seat.HandsMetres) { Seat = seat };
        }

        string[] names = [.. house.Spots.Select(s => s.Name), .. house.Seats.Select(s => s.Name)];
        source.Error(word.Mark, $"{end.Heading}: {Quote.Of(word.Text)} is neither a spot nor a seat of {Quote.Of(house.Name)}; {source.Advice(word.Text, names, "the house file")}");
        return null;
    }

    private MeasurementEnd? ByCoordinates(MeasurementHeader header, IReadOnlyList<CsvCell> line, MeasurementColumn end, MeasurementPlaceColumns place)
    {
        int? level = LevelOf(header, line, place.Level);
        double? x = Length(header, line, place.X, HouseLimits.Coordinate, null);
        double? y = Length(header, line, place.Y, HouseLimits.Coordinate, null);
        double? height = Length(header, line, place.Height, HouseLimits.HeightOverFloor, end == MeasurementColumn.Receiver ? HouseLimits.Hands : null);
        if (level is not { } index || x is not { } east || y is not { } north || height is not { } up)
        {
            return null;
        }

        Point2 plan = new(east, north);
        Mark mark = header.Find(line, place.X)!.Value.Mark;
        Level storey = house.Levels[index];
        string name = NameOf(storey, plan, up);
        if (extents[index] is { } extent && IsBeyond(extent, plan))
        {
            source.Error(mark, 
                $"{end.Heading}: x {lengths.Exact(east)}, y {lengths.Exact(north)} lies outside the level {Quote.Of(storey.Name)}, which reaches {lengths.Extent(extent.Least, extent.Greatest)}; fix the coordinates or the level, or give their unit in the heading");
            return null;
        }

        if (up > storey.HeightMetres + HouseLimits.SameHeight)
        {
            source.Error(header.Find(line, place.Height)?.Mark ?? mark, 
                $"{place.Height.Heading}: {lengths.Exact(up)} is above the ceiling of the level {Quote.Of(storey.Name)}; {lengths.Exact(0)} to {lengths.Exact(storey.HeightMetres)} is allowed");
            return null;
        }

        if (storey.Rooms.Count > 0 && !storey.Rooms.Any(room => room.Outline.Contains(plan)))
        {
            source.Warning(mark, $"{end.Heading}: this is in no room of the level {Quote.Of(storey.Name)}; check the coordinates");
        }

        return new MeasurementEnd(name, index, plan, up);
    }

    private int? LevelOf(MeasurementHeader header, IReadOnlyList<CsvCell> line, MeasurementColumn column)
    {
        if (header.Find(line, column) is not { } cell)
        {
            if (house.Levels.Count == 1)
            {
                return 0;
            }

            source.Error(line[0].Mark, $"{column.Heading}: coordinates need the name of their level; write one of: {string.Join(", ", levels.Keys)}");
            return null;
        }

        if (levels.TryGetValue(cell.Text, out int index))
        {
            return index;
        }

        source.Error(cell.Mark, $"{column.Heading}: no level is named {Quote.Of(cell.Text)}; {source.Advice(cell.Text, levels.Keys)}");
        return null;
    }

    private double? Length(MeasurementHeader header, IReadOnlyList<CsvCell> line, MeasurementColumn column, QuantityRange range, double? absent)
    {
        if (header.Find(line, column) is not { } cell)
        {
            if (absent is null)
            {
                source.Error(line[0].Mark, $"{column.Heading}: this line gives the other coordinates but not this one; write it, for example {lengths.Example}");
            }

            return absent;
        }

        LengthUnit unit = header.UnitOf(column, houseUnit);
        return ValueReader.Measured(
            source, new ScalarNode(cell.Mark, cell.Text, true), column.Heading, range, "a length", text => LengthText.Parse(DecimalComma.AsPoint(text), unit));
    }

    // The name is only for people: files of the program store the place itself, in metres.
    private string NameOf(Level storey, Point2 plan, double up) => lengths.InFeet
        ? $"{storey.Name} {lengths.Exact(plan.X)}, {lengths.Exact(plan.Y)}, {lengths.Exact(up)}"
        : FormattableString.Invariant($"{storey.Name} {plan.X:0.###}, {plan.Y:0.###}, {up:0.###} m");

    private static bool IsBeyond((Point2 Least, Point2 Greatest) extent, Point2 at) =>
        at.X < extent.Least.X - HouseLimits.SameHeight || at.X > extent.Greatest.X + HouseLimits.SameHeight
        || at.Y < extent.Least.Y - HouseLimits.SameHeight || at.Y > extent.Greatest.Y + HouseLimits.SameHeight;

    private static (Point2 Least, Point2 Greatest)? ExtentOf(Level level)
    {
        Point2[] corners = [.. level.Rooms.SelectMany(room => room.Outline.Corners), .. level.Walls.SelectMany(wall => new[] { wall.Start, wall.End })];
        return corners.Length == 0
            ? null
            : (new Point2(corners.Min(c => c.X), corners.Min(c => c.Y)), new Point2(corners.Max(c => c.X), corners.Max(c => c.Y)));
    }
}
