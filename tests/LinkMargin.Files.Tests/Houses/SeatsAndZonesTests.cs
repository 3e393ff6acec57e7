using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses;

namespace LinkMargin.Files.Tests.Houses;

/// <summary>How often seats are used, who plays what, several players, and where a console may stand.</summary>
public sealed class SeatsAndZonesTests
{
    private const string Bed = "{name: bed, level: high, at: [1, 1], hands: 0.9, facing: north-west}";

    [Theory]
    [InlineData("used: daily, ", 30)]
    [InlineData("used: weekly, ", 4)]
    [InlineData("used: rarely, ", 1)]
    [InlineData("used: 12, ", 12)]
    [InlineData("", 30)]
    public void How_often_a_seat_is_used_is_a_word_or_days_of_a_month(string written, double days) =>
        Assert.Equal(days, Seats($"{{name: bed, {written}level: high, at: [1, 1]}}")[1].UsedDays);

    [Fact]
    public void A_seat_can_name_the_console_it_plays()
    {
        House house = HouseText.Read(HouseText.Good.Replace(Bed, "{name: bed, plays: shelf, level: high, at: [1, 1]}", StringComparison.Ordinal)).House!;
        Assert.Equal([false, true], house.Spots.Select(house.Seats[1].IsPlayedAt));
        Assert.Equal([true, true], house.Spots.Select(house.Seats[0].IsPlayedAt));
    }

    [Fact]
    public void Several_players_sit_side_by_side_across_where_they_look()
    {
        IReadOnlyList<Seat> seats = Seats("{name: bench, level: high, at: [3, 2], players: 3, facing: north}");
        Assert.Equal(["bench 1", "bench 2", "bench 3"], seats.Skip(1).Select(s => s.Name));
        Assert.All(seats.Skip(1), seat => Assert.Equal(("bench", 90.0), (seat.WrittenName, seat.FacingDegrees!.Value)));
        AssertPlaces([(2.4, 2), (3, 2), (3.6, 2)], seats.Skip(1));
        AssertPlaces([(3, 2.3), (3, 1.7)], Seats("{name: bench, level: high, at: [3, 2], players: 2, facing: east}").Skip(1));
        AssertPlaces([(2.7, 2), (3.3, 2)], Seats("{name: bench, level: high, at: [3, 2], players: 2}").Skip(1));
        Assert.Equal(["bench"], Seats("{name: bench, level: high, at: [3, 2], players: 1}").Skip(1).Select(s => s.Name));
    }

    [Fact]
    public void Players_may_have_places_of_their_own_and_each_looks_at_the_same_fixture()
    {
        IReadOnlyList<Seat> seats = Seats("{name: den, level: low, players: [[1.75, 1], [3.75, 2.85]], facing: screen}");
        AssertPlaces([(1.75, 1), (3.75, 2.85)], seats.Skip(1));
        Assert.Equal(90, seats[1].FacingDegrees!.Value, 1e-9);
        Assert.Equal(135, seats[2].FacingDegrees!.Value, 1e-9);
        Assert.All(seats.Skip(1), seat => Assert.Equal("screen", seat.Faces));
        Assert.Equal(90, Seats("{name: den, level: low, players: [[1.75, 1]], facing: screen}")[1].FacingDegrees!.Value, 1e-9);
    }

    [Fact]
    public void Zones_and_keep_outs_are_rooms_rectangles_or_outlines()
    {
        House house = HouseText.Read(HouseText.Good).House!;
        Assert.Equal([("loft shelves", 1, 30.0), ("top of the screen", 0, 0.15)], house.Zones.Select(z => (z.Name, z.LevelIndex, Math.Round(z.Outline.AreaSquareMetres, 6))));
        Assert.Equal([0.5, 1.2], house.Zones[0].HeightsMetres);
        KeepOut hall = house.KeepOuts[0], corner = house.KeepOuts[1];
        Assert.Equal((0, 2.4), (hall.FromMetres, hall.ToMetres));
        Assert.True(hall.Contains(new Point2(5, 2), 1) && !hall.Contains(new Point2(3, 2), 1));
        Assert.True(corner.Contains(new Point2(0.2, 0.2), 0.5) && !corner.Contains(new Point2(0.2, 0.2), 1.1) && !corner.Contains(new Point2(0.2, 0.2), 0.1));
    }

    [Fact]
    public void A_house_that_says_nothing_of_zones_has_none()
    {
        House house = HouseText.Read(HouseText.Good.Split("zones:")[0]).House!;
        Assert.Empty(house.Zones);
        Assert.Empty(house.KeepOuts);
    }

    [Fact]
    public void A_zone_beyond_the_plan_looks_odd()
    {
        HouseParseResult parsed = HouseText.Read(HouseText.Good.Replace("corner: [1, 4.8], size: [1.5, 0.1]", "corner: [9, 9], size: [1, 1]", StringComparison.Ordinal));
        Assert.Contains("the zone 'top of the screen' lies outside the level 'low'", Assert.Single(parsed.Problems).Message, StringComparison.Ordinal);
    }

    private static void AssertPlaces((double X, double Y)[] expected, IEnumerable<Seat> seats) =>
        Assert.Equal(expected.SelectMany(p => new[] { p.X, p.Y }), seats.SelectMany(s => new[] { s.Plan.X, s.Plan.Y }), (a, b) => Math.Abs(a - b) < 1e-12);

    private static IReadOnlyList<Seat> Seats(string second)
    {
        HouseParseResult parsed = HouseText.Read(HouseText.Good.Replace(Bed, second, StringComparison.Ordinal));
        Assert.Empty(parsed.Problems);
        return parsed.House!.Seats;
    }
}
