using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Decisions.Remedies;

public sealed class ImproveSearchTests
{
    private static readonly Material Steel = new("steel", 30, 1, "invented for tests") { ThicknessMetres = 0.001 };
    private static readonly Material Mesh = new("mesh", 3, 1, "invented for tests") { ThicknessMetres = 0.001 };
    private static readonly Material Board = new("board", 9, 1, "invented for tests") { ThicknessMetres = 0.1 };
    private static readonly Radio Strong = SimpleHouse.Radio with { Name = "strong", TransmitPower = SimpleHouse.Radio.TransmitPower + new Decibels(5) };

    [Theory, Law]
    [InlineData(ModelDepth.Direct, 15)]
    [InlineData(ModelDepth.Full, 2)]
    public void A_gain_is_what_the_edited_house_gives(ModelDepth depth, int houses) => RoomedHouse.Any.ForAll(
        house =>
        {
            ImproveResult result = Search(house, depth);
            Assert.Equal(Headroom(house, depth), result.Before.WeakestHeadroomDb, 1e-9);
            Assert.All(Variants(result).Concat(result.Pairs), reported =>
            {
                House edited = reported.Remedies.Aggregate(house, (so, remedy) => remedy.ApplyTo(so));
                double after = Headroom(edited, depth);
                Assert.Equal(after, reported.After.WeakestHeadroomDb, 1e-9);
                Assert.Equal(after - result.Before.WeakestHeadroomDb, reported.GainDb, 1e-9);
                Assert.Equal(HeadroomAt(edited, depth, result.Before.Weakest.Seat) - result.Before.WeakestHeadroomDb, reported.GainAtSeatDb ?? double.NaN, 1e-9);
            });
        },
        cases: houses);

    [Fact, Law]
    public void By_the_margin_to_count_on_a_gain_and_its_probability_are_what_the_edited_house_gives_too() => RoomedHouse.Any.ForAll(
        house =>
        {
            var basis = new UncertaintyBasis(new Spreads(4, 0.2, 3, 0.05, 20, 10, 12)) { Draws = 60 };
            ImproveResult result = new ImproveSearch(house, new LinkModel(house, ModelDepth.Direct), Request(house), new JudgeAtConfidence(basis)).Run();
            Assert.All(result.Alone.Concat(result.Pairs), reported =>
            {
                House edited = reported.Remedies.Aggregate(house, (so, remedy) => remedy.ApplyTo(so));
                var model = new LinkModel(edited, ModelDepth.Direct);
                var uncertainty = HouseUncertainty.Of(model, edited.Spots, edited.Seats, basis);
                Spot spot = edited.Spots.Single(s => s.Name == reported.After.Spot.Name);
                var after = new SpotScore(spot, LinkEvaluation.Budgets(model, spot, edited.Seats.Where(seat => seat.IsPlayedAt(spot))), uncertainty.AtConfidence);
                Assert.Equal(after.WeakestHeadroomDb - result.Before.WeakestHeadroomDb, reported.GainDb, 1e-9);
                Assert.Equal(uncertainty.ProbabilityAllPass(after.Budgets), reported.After.ProbabilityAllPass!.Value, 1e-9);
            });
        },
        cases: 5);

    /// <summary>A remedy that gains next to nothing by the median is not drawn: were all drawn, the same would be reported.</summary>
    [Theory, Law]
    [InlineData(ModelDepth.Direct, 20)]
    [InlineData(ModelDepth.Full, 4)]
    public void What_gains_next_to_nothing_by_the_median_would_not_be_reported(ModelDepth depth, int houses) => RoomedHouse.Any.ForAll(
        house =>
        {
            var judge = new JudgeAtConfidence(new UncertaintyBasis(new Spreads(4, 0.2, 3, 0.05, 20, 10, 12)) { Draws = 60 });
            var model = new LinkModel(house, depth);
            ImproveResult some = new ImproveSearch(house, model, Request(house), judge).Run();
            ImproveResult all = new ImproveSearch(house, model, Request(house), judge, double.PositiveInfinity).Run();
            Assert.Equal(Reported(all.Alone), Reported(some.Alone));
            Assert.Equal(Reported(all.Pairs), Reported(some.Pairs));
        },
        cases: houses);

    [Fact]
    public void A_zone_on_another_level_is_reported_with_the_cable_it_takes()
    {
        House house = RoomedHouse.Any.Where(h => h.Levels.Count > 1).Generate(new PCG(3, 3), null, out _);
        Spot spot = house.Spots[0];
        int elsewhere = (spot.LevelIndex + 1) % house.Levels.Count;
        Room room = house.Levels[elsewhere].Rooms[0];
        var middle = new Point2((room.Outline.Least.X + room.Outline.Greatest.X) / 2, (room.Outline.Least.Y + room.Outline.Greatest.Y) / 2);
        house = house with
        {
            Zones = [new Zone("shelf", elsewhere, new Polygon([middle, new(middle.X + 0.4, middle.Y), new(middle.X + 0.4, middle.Y + 0.4), new(middle.X, middle.Y + 0.4)]), [1])],
            Seats = [new Seat("seat", elsewhere, new Point2(middle.X + 0.2, middle.Y - 0.3), 0.7, null, 60)],
        };
        ImproveResult result = new ImproveSearch(house, new LinkModel(house, ModelDepth.Direct), new ImproveRequest(spot, [], [])).Run();
        Remedy zone = Assert.Single(result.Alone, r => r.Remedies[0].Kind == RemedyKind.Shelf).Remedies[0];
        Assert.Equal((Effort.Cable, true, elsewhere), (zone.Effort, zone.CrossesStructure, zone.LevelIndex!.Value));
    }

    [Fact, Law]
    public void They_come_by_gain_and_the_cheap_ones_first_among_equals() => RoomedHouse.Any.ForAll(
        house =>
        {
            IReadOnlyList<RemedyResult> reported = Search(house, ModelDepth.Direct).Alone;
            Assert.All(reported.Zip(reported.Skip(1)), pair =>
            {
                double first = Math.Round(pair.First.GainDb, 1), second = Math.Round(pair.Second.GainDb, 1);
                Assert.True(first > second || (first == second && pair.First.Effort <= pair.Second.Effort));
            });
        },
        cases: 10);

    // In the middle of each room.
    private static IEnumerable<Zone> ShelvesOn(Level level, int number) => level.Rooms.Select((room, i) =>
    {
        Point2 least = room.Outline.Least, middle = least + (0.5 * (room.Outline.Greatest - least));
        Point2[] corners = [.. new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(c => middle + (0.2 * new Point2(c.Item1, c.Item2)))];
        return new Zone($"shelf {number} {i}", number, new Polygon(corners), [1]);
    });

    [Fact, Law]
    public void None_alone_makes_the_weakest_seat_worse_off_unless_more_seats_pass() => RoomedHouse.Any.ForAll(
        house =>
        {
            ImproveResult result = Search(house with { Zones = [.. house.Levels.SelectMany(ShelvesOn)] }, ModelDepth.Direct);
            Assert.All(result.Alone, alone => Assert.True(
                alone.GainDb > -ImproveRequest.LeastGainDb || alone.After.SeatsPassing > result.Before.SeatsPassing, $"{alone.GainDb}"));
        },
        cases: 40);

    [Fact]
    public void A_console_in_a_steel_box_is_helped_by_an_open_side_a_panel_and_a_lead()
    {
        ImproveResult result = Search(Boxed, ModelDepth.Direct);

        // The seat lies east of the box: the way to it is through that side alone.
        RemedyResult open = Assert.Single(result.Alone, r => r.Remedies[0].Kind == RemedyKind.OpenSide);
        Assert.Equal((BoxSides.East, 30), (open.Remedies[0].Side, Math.Round(open.GainDb, 9)));
        Assert.Equal(30, open.GainAtSeatDb!.Value, 1e-9); // the only seat
        RemedyResult mesh = Assert.Single(result.Alone, r => r.Remedies[0].Kind == RemedyKind.SwapSide);
        Assert.Equal((BoxSides.East, 27), (mesh.Remedies[0].Side, Math.Round(mesh.GainDb, 9)));

        // The whole box open or of mesh gains no more, so it is not told; the other sides gain nothing.
        Assert.Empty(open.Alternatives.Concat(mesh.Alternatives));

        // The shortest lead gets it out; a longer one is told only where it gains more than going nearer the seat a little.
        RemedyResult[] leads = [.. Variants(result).Where(r => r.Remedies[0].Kind == RemedyKind.Lead).OrderBy(r => r.Remedies[0].LengthMetres)];
        Assert.Equal(1, leads[0].Remedies[0].LengthMetres);
        Assert.True(leads[0].GainDb >= 29);
        Assert.All(leads.Zip(leads.Skip(1)), pair => Assert.True(pair.Second.GainDb >= pair.First.GainDb + ImproveRequest.LeastGainDb));
        Assert.All(Variants(result), r => Assert.True(r.GainDb >= ImproveRequest.LeastGainDb || r.GainAtSeatDb is null or >= ImproveRequest.LeastGainDb));
    }

    [Fact]
    public void A_door_left_open_and_a_stronger_controller_gain_what_they_must()
    {
        ImproveResult result = Search(TwoRooms(60), ModelDepth.Direct);
        RemedyResult door = Assert.Single(result.Alone, r => r.Remedies[0].Kind == RemedyKind.OpenDoor);
        Assert.Equal(9, door.GainDb, 1e-9);
        Assert.Equal("door between", door.Remedies[0].Thing); // the one that leads out of doors is left shut
        Assert.Equal(5, Assert.Single(result.Alone, r => r.Remedies[0].Kind == RemedyKind.Controller).GainDb, 1e-9);
    }

    [Fact]
    public void Two_together_are_reported_where_one_is_not_enough_and_only_then()
    {
        double required = Headroom(TwoRooms(0), ModelDepth.Direct) + 10;
        ImproveResult result = Search(TwoRooms(required), ModelDepth.Direct);
        Assert.False(result.Before.PassesAll);
        Assert.DoesNotContain(result.Alone, one => one.After.PassesAll);
        Assert.Contains(result.Pairs, pair => pair.After.PassesAll);
        Assert.All(result.Pairs, pair => Assert.Equal(2, pair.Remedies.Select(remedy => remedy.Kind).Distinct().Count()));
        Assert.True(result.CanPassAll);
        Assert.Empty(Search(TwoRooms(required - 9), ModelDepth.Direct).Pairs); // a door left open is enough
    }

    [Fact]
    public void A_cable_takes_its_seat_out_of_the_question_and_has_a_length()
    {
        House house = TwoRooms(60);
        house = house with { Seats = [.. house.Seats, new Seat("near", 0, new Point2(1.5, 1), 0.7, null, 15)] };
        RemedyResult cable = Assert.Single(Search(house, ModelDepth.Direct).Alone, r => r.Remedies[0].Kind == RemedyKind.Wire);
        Assert.Null(cable.GainAtSeatDb);
        Assert.Equal("near", cable.After.Weakest.Seat.Name);
        Assert.True(cable.Remedies[0].CrossesStructure);
        Assert.Equal(8.5, cable.Remedies[0].LengthMetres); // 6 m along and 0.3 m down, 1 m to spare at either end, by the half metre
        Assert.DoesNotContain(Search(TwoRooms(60), ModelDepth.Direct).Alone, r => r.Remedies[0].Kind == RemedyKind.Wire); // the only seat
    }

    [Fact]
    public void A_search_that_is_stopped_stops()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        House house = TwoRooms(60);
        Assert.Throws<OperationCanceledException>(() => new ImproveSearch(house, new LinkModel(house, ModelDepth.Direct), Request(house)).Run(null, stop.Token));
    }

    private static IEnumerable<RemedyResult> Variants(ImproveResult result) => result.Alone.SelectMany(one => one.Alternatives.Prepend(one));

    private static IEnumerable<(string, double)> Reported(IEnumerable<RemedyResult> results) =>
        results.Select(result => (string.Join(" + ", result.Remedies.Select(remedy => $"{remedy.Kind} {remedy.Thing} {remedy.Side}")), Math.Round(result.GainDb, 9)));

    private static ImproveRequest Request(House house) => new(house.Spots[0], [Mesh], [house.Controller, Strong]);

    private static ImproveResult Search(House house, ModelDepth depth) =>
        new ImproveSearch(house, new LinkModel(house, depth), Request(house)).Run();

    private static double Headroom(House house, ModelDepth depth) =>
        new SpotScore(house.Spots[0], LinkEvaluation.Budgets(new LinkModel(house, depth), house.Spots[0], house.Seats)).WeakestHeadroomDb;

    // NaN where the seat no longer plays at the spot.
    private static double HeadroomAt(House house, ModelDepth depth, Seat worst) =>
        LinkEvaluation.Budgets(new LinkModel(house, depth), house.Spots[0], [.. house.Seats.Where(seat => seat.IsPlayedAt(house.Spots[0]))])
            .Where(budget => budget.Seat.Name == worst.Name)
            .Select(budget => budget.HeadroomDb)
            .DefaultIfEmpty(double.NaN)
            .Single();

    private static House Boxed => SimpleHouse.OfWalls() with
    {
        Levels = [new Level("hall", 0, 2.5) { Rooms = [Room("hall", 0, 0, 8, 4)] }],
        Fixtures = [new Fixture("rack", 0, new Point2(1, 2), 0.6, 0.6, 0, 0, 1, Steel) { IsShell = true }],
        Spots = [new Spot("in rack", 0, new Point2(1, 2), 0.5)],
        Seats = [new Seat("seat", 0, new Point2(7, 2), 0.5, null, 15)],
    };

    private static House TwoRooms(double requiredDb) => SimpleHouse.OfWalls() with
    {
        Levels =
        [
            new Level("ground", 0, 2.5)
            {
                Rooms = [Room("west", 0, 0, 4, 2), Room("east", 4, 0, 8, 2)],
                Walls =
                [
                    new Wall("west | east", new Point2(4, 0), new Point2(4, 2), 0, 2.5, Board)
                    {
                        Openings = [new Opening("door between", OpeningKind.Door, 0.3, 1.4, 0, 2.4, Board, false)],
                    },
                    new Wall("east | outside", new Point2(8, 0), new Point2(8, 2), 0, 2.5, Board)
                    {
                        Openings = [new Opening("side door", OpeningKind.Door, 0.3, 1.4, 0, 2.4, Board, false)],
                    },
                ],
            },
        ],
        Spots = [new Spot("shelf", 0, new Point2(1, 1), 1)],
        Seats = [new Seat("far", 0, new Point2(7, 1), 0.7, null, requiredDb)],
        Console = SimpleHouse.Radio with { Name = "console", TransmitPower = Strong.TransmitPower },
    };

    private static Room Room(string name, double west, double south, double east, double north) =>
        new(name, new Polygon([new(west, south), new(east, south), new(east, north), new(west, north)]));
}
