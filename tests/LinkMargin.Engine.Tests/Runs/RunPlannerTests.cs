using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>Which runs a spot needs, and what is bought for them.</summary>
public sealed class RunPlannerTests
{
    private static readonly PictureSignal Demanding = new(3840, 2160, 120, ColourSampling.Full, 12);

    private static readonly CableKind Copper = Kind("copper", 0.008, false, [new(18, 5, 8), new(48, 3, 5)], 1, 2, 3, 5);
    private static readonly CableKind Optical = Kind("optical", 0.005, true, [new(48, 50, 100)], 5, 10, 15, 20, 15.24);

    [Fact]
    public void Beside_its_display_a_console_takes_a_short_lead()
    {
        SpotRuns runs = Plan(House(Display(0.5)), "left");
        Assert.Equal((0, 0, RunMeans.Patch), (runs.NewRuns, runs.Holes, runs.Runs.Single().Means));
        Assert.Equal("copper", runs.Runs[0].Kind!.Name);
    }

    [Fact]
    public void Far_from_it_it_takes_a_new_run_with_slack_in_the_next_length_sold()
    {
        SpotRuns runs = Plan(House(Display(5.5)), "left");
        Run run = runs.Runs.Single();
        Assert.Equal((RunMeans.New, "optical", 10.0), (run.Means, run.Kind!.Name, run.BuyMetres));
        Assert.Equal(run.Route!.LengthMetres + (2 * Run.EndSlackMetres), run.NeededMetres, 1e-9);
        Assert.Equal(10 - run.NeededMetres, run.CoilMetres, 1e-9);
        Assert.True(runs.IsComplete);
    }

    /// <summary>Common practice: two series of lengths. 15 m is 49.2 ft: a run of 50 ft takes the 50 ft cable.</summary>
    [Theory]
    [InlineData(15.24, 15.24)]
    [InlineData(15.0, 15.0)]
    [InlineData(15.01, 15.24)]
    [InlineData(15.25, 20.0)]
    [InlineData(20.01, null)]
    public void The_next_length_sold_serves(double needed, double? stock) => Assert.Equal(stock, Optical.StockFor(needed));

    [Theory]
    [InlineData(48, 3, Carries.Yes)]
    [InlineData(48, 3.01, Carries.Borderline)]
    [InlineData(48, 5.01, Carries.No)]
    [InlineData(18, 5.01, Carries.Borderline)]
    [InlineData(24, 4, Carries.Borderline)]
    [InlineData(64, 1, Carries.No)]
    public void A_cable_carries_less_over_more_length(double gbps, double metres, Carries expected) => Assert.Equal(expected, Copper.Carries(gbps, metres));

    [Fact]
    public void A_cable_that_is_pulled_is_used_if_it_points_the_right_way()
    {
        House house = House(Display(5.5));
        CablePlace spot = Place("left", 0.5), display = house.Cabling.Displays[0].Place;
        SpotRuns used = Plan(With(house, new PulledCable("old", spot, display, Optical, 15)), "left");
        Assert.Equal((RunMeans.Existing, 0, 0.0), (used.Runs[0].Means, used.NewRuns, used.BuyMetres));
        SpotRuns turned = Plan(With(house, new PulledCable("old", display, spot, Optical, 15)), "left");
        Assert.Equal((RunMeans.New, "old"), (turned.Runs[0].Means, turned.Runs[0].WrongWay.Single().Name));
        SpotRuns copper = Plan(With(house, new PulledCable("old", display, spot, Copper, 5)), "left");
        Assert.Equal((RunMeans.Existing, Carries.Borderline), (copper.Runs[0].Means, copper.Runs[0].ByCable));
        SpotRuns slow = Plan(With(house, new PulledCable("old", spot, display, Copper, 8)), "left");
        Assert.Equal((RunMeans.New, "old"), (slow.Runs[0].Means, slow.Runs[0].TooSlow.Single().Name));
    }

    [Fact]
    public void Two_inputs_take_a_splitter_where_it_saves_a_run()
    {
        House house = House(Display(5.5), Display(5.6) with { Name = "second", Place = Place("second", 5.6) });
        SpotRuns bought = Plan(house, "left");
        Assert.Equal((1, 2, (string?)null), (bought.NewRuns, bought.Splitter!.Outputs, bought.Splitter.Name));
        var splitter = new Device("box", DeviceRole.Splitter, Place("box", 0.6), 1, 2) { PassesGbps = 40 };
        SpotRuns described = Plan(house with { Cabling = house.Cabling with { Devices = [splitter] } }, "left");
        Assert.Equal((1, "box", true), (described.NewRuns, described.Splitter!.Name, described.Splitter.IsMoved));
        Assert.Equal(Carries.No, described.Carries); // 48.11 Gbit/s through 40
    }

    [Fact]
    public void A_processed_input_is_fed_by_way_of_the_processor()
    {
        var processor = new Device("processor", DeviceRole.Processor, Place("processor", 3), 4, 1);
        House house = House(Display(5.5) with { Inputs = [DisplayInput.Processed] });
        SpotRuns straight = Plan(house, "left");
        Assert.Equal("screen", straight.WithoutProcessor.Single());
        SpotRuns runs = Plan(house with { Cabling = house.Cabling with { Devices = [processor] } }, "left");
        Assert.Equal(["left -> processor", "processor -> screen"], runs.Runs.Select(run => $"{run.Connection.FromName} -> {run.Connection.ToName}").Order());
        Assert.Empty(runs.WithoutProcessor);
    }

    [Fact]
    public void Only_displays_that_a_seat_of_the_spot_faces_are_fed()
    {
        House house = House(Display(5.5) with { Place = Place("screen", 5.5) with { Fixture = "panel" } });
        Assert.Single(Plan(house, "left").Runs);
        Assert.Empty(Plan(house with { Seats = [house.Seats[0] with { Faces = null }] }, "left").Runs);
        Assert.Empty(Plan(house with { Seats = [house.Seats[0] with { Plays = "right" }] }, "left").Runs);
    }

    [Fact]
    public void What_no_cable_or_link_carries_is_said()
    {
        House house = House(Display(5.5));
        SpotRuns none = Plan(house with { Cabling = house.Cabling with { Kinds = [Copper] } }, "left");
        Assert.Equal((RunGap.Kind, false), (none.Runs[0].Gap, none.IsComplete));
        SpotRuns fast = Plan(House(Display(5.5) with { Signal = Demanding with { BitsPerSample = 16 } }), "left");
        Assert.Equal(RunGap.Rate, fast.Runs[0].Gap);
        SpotRuns nowhere = Plan(house with { Levels = [house.Levels[0] with { Rooms = [] }] }, "left");
        Assert.Equal(RunGap.Route, nowhere.Runs[0].Gap);
    }

    /// <summary>A plug of 21 x 12 mm is 24.2 mm across; a pulling head of 10 x 6 mm is 11.7 mm.</summary>
    [Theory]
    [InlineData(25, 0, "optical", true)]
    [InlineData(24, 0, "slim", true)]
    [InlineData(12, 0, "slim", true)]
    [InlineData(11, 0, "optical", true)]
    [InlineData(20, 1, "slim", true)]
    [InlineData(17, 1, "slim", false)]
    public void Through_a_narrow_passage_goes_the_first_kind_whose_end_passes(double boreMillimetres, int held, string kind, bool fits)
    {
        CableKind slim = Optical with { Name = "slim", Plug = new PlugSize(0.010, 0.006) };
        CableKind wire = Copper with { Name = "wire", DiameterMetres = 0.006, Use = CableUse.Other };
        var sleeve = new Passage("sleeve", 0, 0, new Point2(5.9, 1), new Point2(6.1, 1)) { BoreMetres = boreMillimetres / 1000, Holds = [.. Enumerable.Repeat(wire, held)] };
        House house = TwoRooms();
        SpotRuns runs = Plan(house with { Cabling = house.Cabling with { Kinds = [Optical, slim, wire], Passages = [sleeve] } }, "left");
        Run run = runs.Runs.Single();
        Assert.Equal(kind, run.Kind!.Name);
        bool isThrough = boreMillimetres > 11.7; // else the wall is bored
        Assert.Equal(isThrough ? (0, 1) : (1, 0), (run.Route!.Holes, run.Route.Passages.Count));
        Assert.Equal(fits, runs.IsComplete);
        Assert.All(runs.Passages, fit => Assert.Equal(fits, fit.Fits && fit.Stuck.Count == 0));
    }

    /// <summary>USB 2.0: 5 m from hub to device.</summary>
    [Fact]
    public void A_lead_takes_the_first_kind_that_is_long_enough()
    {
        CableKind passive = Kind("passive", 0.0045, true, [new(0, 5, 5)]) with { Use = CableUse.Lead }, active = passive with { Name = "active", Reaches = [new(0, 20, 20)] };
        House house = House(Display(0.5));
        CablePlace hands = CablePlace.Of(house.Seats[0]);
        LeadRun lead = new RunPlanner(house, [passive, active], [hands]).Lead(house.Spots[0], hands);
        Assert.Equal("active", lead.Kind!.Name);
        Assert.Equal(lead.Route!.LengthMetres + (2 * Run.EndSlackMetres), lead.NeededMetres, 1e-9);
    }

    private static SpotRuns Plan(House house, string spot) => new RunPlanner(house).Plan(house.Spots.Single(s => s.Name == spot));

    private static House With(House house, PulledCable cable) => house with { Cabling = house.Cabling with { Cables = [cable] } };

    private static CablePlace Place(string name, double x) => new(name, 0, new Point2(x, 0.1), 0.5, null);

    private static Display Display(double x) => new("screen", Place("screen", x), [DisplayInput.Direct], Demanding);

    // One room of 6 m by 4 m, a spot near either end of its south wall, a seat in the middle that faces a panel.
    private static House House(params Display[] displays)
    {
        Point2[] corners = [new(0, 0), new(6, 0), new(6, 4), new(0, 4)];
        var level = new Level("level", 0, SimpleHouse.HeightMetres)
        {
            Rooms = [new Room("den", new Polygon(corners))],
            Walls = [.. corners.Select((corner, i) => SimpleHouse.FullWall($"wall {i}", corner, corners[(i + 1) % 4], 3))],
        };
        return SimpleHouse.Of(level) with
        {
            Spots = [new Spot("left", 0, new Point2(0.5, 0.1), 0.5), new Spot("right", 0, new Point2(5.5, 0.1), 0.5)],
            Seats = [new Seat("sofa", 0, new Point2(3, 3.8), 0.7, null, 15) { Faces = "panel" }],
            Cabling = new Cabling { Displays = displays, Kinds = [Copper, Optical] },
        };
    }

    // A room more to the east, with the display in it.
    private static House TwoRooms()
    {
        House house = House(Display(7));
        Point2[] corners = [new(6, 0), new(8, 0), new(8, 4), new(6, 4)];
        Level level = house.Levels[0] with
        {
            Rooms = [.. house.Levels[0].Rooms, new Room("booth", new Polygon(corners))],
            Walls = [.. house.Levels[0].Walls, .. corners.Take(3).Select((corner, i) => SimpleHouse.FullWall($"booth {i}", corner, corners[i + 1], 3))],
        };
        return house with { Levels = [level] };
    }

    private static CableKind Kind(string name, double diameter, bool isDirectional, Reach[] reaches, params double[] stock) =>
        new(name, CableUse.Picture, diameter, 0.05, isDirectional, new PlugSize(0.021, 0.012), "invented for tests")
        {
            Reaches = reaches, Stock = [.. stock.Order().Select(metres => new StockLength(metres, $"{metres} m"))],
        };
}
