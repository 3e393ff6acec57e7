using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Houses.Placement;

/// <summary>Reads where players sit. A seat for several players becomes one seat each, marked as belonging together.</summary>
internal sealed class SeatReader(PlacementContext placement, IReadOnlyCollection<string> spotNames, double requiredDb)
{
    private static readonly Dictionary<string, double> UseWords = new()
    {
        ["daily"] = Use.DailyDays,
        ["weekly"] = Use.WeeklyDays,
        ["rarely"] = Use.RarelyDays,
    };

    private readonly Source source = placement.Source;

    /// <summary>Reads all seats that are readable.</summary>
    public List<Seat> ReadAll(MappingReader file)
    {
        Names names = new(source, "a seat");
        List<Seat> seats = [];
        List<MappingReader> groups = [.. file.OptionalGroups("seats", "a seat", HouseKeys.Seat)];
        TooMany.Check(source, file, "seats", groups.Count, HouseLimits.MostSeats);
        if (groups.Count == 0)
        {
            source.Warning(file.MarkOf("seats"), "the house has no seats, so there is nobody to compare spots for; add 'seats'");
        }

        foreach (MappingReader group in groups.Take(HouseLimits.MostSeats))
        {
            string? name = group.RequiredName("name");
            List<Seat> players = Read(group, name ?? "a seat");
            if (name is null)
            {
                continue;
            }

            foreach (string taken in players.Count > 0 ? players.Select(seat => seat.Name) : [name])
            {
                names.Take(taken, group.MarkOf("name"));
            }

            seats.AddRange(players);
        }

        return seats;
    }

    /// <summary>One seat for each player; empty if the place, the level or the height cannot be read.</summary>
    private List<Seat> Read(MappingReader group, string name)
    {
        int? level = placement.LevelOf(group);
        Point2? at = group.Optional("at") is { } node ? Place(node) : null;
        double? hands = group.Has("hands") ? group.OptionalLength("hands", HouseLimits.HeightOverFloor) : HouseLimits.Hands;
        SeatTraits traits = Traits(group);
        PlayersReader players = new(group);
        Node? facing = group.Optional("facing");

        // The row is at right angles to where its middle faces; listed players each have their own direction.
        Gaze middle = players.AreListed ? default : Faces(facing, level, at);
        if (players.Read(at, middle.Degrees) is not { } places || level is not { } index || hands is not { } height)
        {
            return [];
        }

        placement.CheckHeight(index, height, group.MarkOf("hands"), "hands");
        bool isAlone = places.Count == 1;
        List<Seat> seats = [];
        for (int i = 0; i < places.Count; i++)
        {
            string player = isAlone ? name : FormattableString.Invariant($"{name} {i + 1}");
            CheckPlace(group, index, places[i], height, player);
            Gaze own = isAlone && !players.AreListed ? middle : Faces(facing, index, places[i]);
            seats.Add(new Seat(player, index, places[i], height, own.Degrees, traits.RequiredDb)
            {
                Faces = own.Fixture,
                UsedDays = traits.UsedDays,
                Plays = traits.Plays,
                Group = isAlone ? null : name,
            });
        }

        return seats;
    }

    private SeatTraits Traits(MappingReader group) =>
        new(
            group.OptionalNumber("required", Quantity.Decibels, HouseLimits.Required) ?? requiredDb,
            group.Optional("used") is { } word ? UsedDays(word) : Use.DailyDays,
            Plays(group));

    private Gaze Faces(Node? facing, int? level, Point2? at) => facing is null ? default : new FacingReader(placement).Read(facing, level, at);

    private void CheckPlace(MappingReader group, int level, Point2 place, double height, string player)
    {
        Mark mark = group.MarkOf(group.Has("at") ? "at" : "players");
        string what = $"the seat {Quote.Of(player)}";
        placement.CheckPlace(level, place, height, mark, what);
        if (placement.SolidAt(level, place, height) is { } solid)
        {
            source.Warning(mark, $"the hands of {what} are inside the solid fixture {Quote.Of(solid.Name)}; raise 'hands' or move one of the two");
        }
    }

    private Point2? Place(Node node)
    {
        if (node is SequenceNode { Items: [ScalarNode, ScalarNode, ScalarNode] })
        {
            source.Error(node.Mark, "at: a seat is at [x, y]; the height of the hands over the floor is written as 'hands'");
            return null;
        }

        return PlaceReader.Plan(source, node, "at");
    }

    private double UsedDays(Node node)
    {
        if (node is ScalarNode { IsNull: false } scalar && scalar.Text.Any(char.IsAsciiDigit))
        {
            return ValueReader.Number(source, node, "used", Quantity.DaysAMonth, HouseLimits.UsedDays) ?? Use.DailyDays;
        }

        if (ValueReader.Text(source, node, "used") is not { } word)
        {
            return Use.DailyDays;
        }

        if (UseWords.TryGetValue(word, out double days))
        {
            return days;
        }

        string advice = NearestWord.Find(word, UseWords.Keys) is { } meant
            ? $"did you mean '{meant}'?"
            : $"write {string.Join(", ", UseWords.Keys)}, or on how many days of a month";
        source.Error(node.Mark, $"used: {Quote.Of(word)} does not say how often; {advice}");
        return Use.DailyDays;
    }

    private string? Plays(MappingReader group)
    {
        if (group.OptionalName("plays") is not { } spot || spotNames.Contains(spot))
        {
            return group.OptionalName("plays");
        }

        source.Error(group.MarkOf("plays"), $"plays: no spot is named {Quote.Of(spot)}; {source.Advice(spot, spotNames)}");
        return null;
    }

    /// <summary>What all players of one seat have in common.</summary>
    private readonly record struct SeatTraits(double RequiredDb, double UsedDays, string? Plays);
}
