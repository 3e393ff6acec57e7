using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses;

/// <summary>Reads where players sit.</summary>
internal sealed class SeatReader(Premises premises, double requiredDb)
{
    private readonly Source source = premises.Source;

    /// <summary>Reads all that can be read.</summary>
    public List<Seat> ReadAll(MappingReader file)
    {
        Names names = new(source, "a seat");
        List<Seat> seats = [];
        List<MappingReader> groups = [.. file.OptionalGroups("seats", "a seat", HouseKeys.Seat)];
        TooMany.Check(source, file, "seats", groups.Count, HouseLimits.MostSeats);
        if (groups.Count == 0)
        {
            source.Odd(file.MarkOf("seats"), "the house has no seats, so there is nobody to compare spots for; add 'seats'");
        }

        foreach (MappingReader group in groups.Take(HouseLimits.MostSeats))
        {
            string? name = group.RequiredName("name");
            if (name is not null)
            {
                names.Take(name, group.MarkOf("name"));
            }

            if (Read(group, name ?? "a seat") is { } seat && name is not null)
            {
                seats.Add(seat);
            }
        }

        return seats;
    }

    private Seat? Read(MappingReader group, string name)
    {
        int? level = premises.LevelOf(group);
        Point2? at = group.Required("at") is { } node ? Place(node) : null;
        double? hands = group.Has("hands") ? group.OptionalLength("hands", HouseLimits.HeightOverFloor) : HouseLimits.Hands;
        double required = group.OptionalNumber("required", Quantity.Decibels, HouseLimits.Required) ?? requiredDb;
        (double? Degrees, string? Fixture) facing = group.Optional("facing") is { } word ? new FacingReader(premises).Read(word, level, at) : default;
        if (level is not { } index || at is not { } place || hands is not { } height)
        {
            return null;
        }

        string what = $"the seat {Quote.Of(name)}";
        premises.CheckHeight(index, height, group.MarkOf("hands"), "hands");
        premises.CheckPlace(index, place, height, group.MarkOf("at"), what);
        if (premises.SolidAt(index, place, height) is { } solid)
        {
            source.Odd(group.MarkOf("at"), $"the hands of {what} are inside the solid fixture {Quote.Of(solid.Name)}; raise 'hands' or move one of the two");
        }

        return new Seat(name, index, place, height, facing.Degrees, required) { Faces = facing.Fixture };
    }

    private Point2? Place(Node node)
    {
        if (node is SequenceNode { Items: [ScalarNode, ScalarNode, ScalarNode] })
        {
            source.Mistake(node.Mark, "at: a seat is at [x, y]; the height of the hands over the floor is written as 'hands'");
            return null;
        }

        return PlaceReader.Plan(source, node, "at");
    }
}
