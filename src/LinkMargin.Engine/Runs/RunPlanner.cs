using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// Plans the runs of a spot: which connections its console needs, which of them existing cables make, where new cables lie, what kind and
/// length to buy, whether they fit and carry the picture. For one house; the structure is laid out once.
/// </summary>
public sealed class RunPlanner
{
    /// <summary>Ends this close to each other in one room are joined by a short lead, metres.</summary>
    public const double PatchMetres = 2;

    // Slack of a patch lead, so that it is not stretched, metres.
    private const double PatchSlackMetres = 0.5;

    private readonly House house;
    private readonly RouteSearch routes;
    private readonly RoomEdges rooms;
    private readonly Dictionary<CablePlace, int> roomOf = [];
    private readonly Dictionary<(CablePlace From, CablePlace To, double Gbps), Run> bought = []; // runs that no existing cable makes
    private readonly CableKind[] pictureKinds;

    /// <summary>Lays out the house's structure.</summary>
    /// <param name="house">The house.</param>
    /// <param name="kinds">The kinds of cable to choose from; null for those of the house.</param>
    /// <param name="leadEnds">Where leads may end besides spots, displays and devices.</param>
    public RunPlanner(House house, IReadOnlyList<CableKind>? kinds = null, IReadOnlyList<CablePlace>? leadEnds = null)
    {
        ArgumentNullException.ThrowIfNull(house);
        house = kinds is null ? house : house with { Cabling = house.Cabling with { Kinds = kinds } };
        this.house = house;
        rooms = new RoomEdges(house);
        pictureKinds = [.. house.Cabling.Kinds.Where(kind => kind.Use == CableUse.Picture)];
        IEnumerable<CablePlace> ends =
        [
            .. house.Spots.Select(spot => CablePlace.Of(spot, house.Fixtures)),
            .. leadEnds ?? [],
            .. house.Cabling.Displays.Select(display => display.Place),
            .. house.Cabling.Devices.Select(device => device.Place),
        ];
        routes = new RouteSearch(new StructureGraph(house, ends, passage => house.Cabling.Kinds.Any(kind => PassageFit.PassesEmpty(passage, kind.Plug))));
    }

    /// <summary>The runs of one spot; null where the house file describes no display.</summary>
    public static SpotRuns? Of(House house, Spot spot)
    {
        ArgumentNullException.ThrowIfNull(house);
        return house.Cabling.Displays.Count == 0 ? null : new RunPlanner(house with { Spots = [spot] }).Plan(spot);
    }

    /// <summary>Plans the runs of a spot of the house: the arrangement with the fewest new runs, then the fewest holes, then the least to buy.</summary>
    public SpotRuns Plan(Spot spot)
    {
        CablePlace console = CablePlace.Of(spot, house.Fixtures);
        IReadOnlyList<Display> displays = PictureDemand.DisplaysOf(house, spot);
        return PictureDemand.Of(house, console, displays)
            .Select(demand => Plan(spot, demand) with { WithoutProcessor = PictureDemand.WithoutProcessor(house, displays), Lead = LeadOf(spot) })
            .OrderBy(plan => plan.Runs.Count(run => run.Gap != RunGap.None))
            .ThenBy(plan => plan.NewRuns)
            .ThenBy(plan => plan.Holes)
            .ThenBy(plan => plan.BuyMetres)
            .First();
    }

    private RadioLead? LeadOf(Spot spot)
    {
        if (spot.Lead is not { } lead)
        {
            return null;
        }

        CablePlace console = CablePlace.Of(spot, house.Fixtures);
        Room? room = house.Levels[spot.LevelIndex].Rooms.FirstOrDefault(room => room.Outline.Contains(console.Plan));
        double laid = room is null ? double.PositiveInfinity : new LeadRoutes(house, console, room).LengthsTo([console with { Plan = spot.Plan, HeightMetres = spot.HeightMetres, Fixture = null }])[0];
        return new RadioLead(lead.LengthMetres, laid, LeadKind(lead.LengthMetres).Kind);
    }

    // The first kind of the table that surely works over a length; failing that, the first that may.
    private (CableKind? Kind, Carries Carries) LeadKind(double metres) => house.Cabling.Kinds.Where(kind => kind.Use == CableUse.Lead)
        .Select(kind => ((CableKind?)kind, kind.Carries(0, metres)))
        .Where(pair => pair.Item2 != Carries.No)
        .OrderBy(pair => pair.Item2)
        .FirstOrDefault((null, Carries.No));

    /// <summary>Plans a lead from a spot to one of the ends of leads.</summary>
    public LeadRun Lead(Spot from, CablePlace to)
    {
        CablePlace start = CablePlace.Of(from, house.Fixtures);
        Route? route = routes.Find(start, to);
        double needed = (route?.LengthMetres ?? Square(start, to)) + (2 * Run.EndSlackMetres);
        (CableKind? kind, Carries carries) = LeadKind(needed);
        return new LeadRun(start, to, route, needed, kind, carries);
    }

    private SpotRuns Plan(Spot spot, PictureDemand demand)
    {
        HashSet<PulledCable> used = [];
        List<Run> runs = [];
        foreach (Connection connection in demand.Connections)
        {
            Run run = Of(connection, used);
            runs.Add(run);
            if (run.Existing is { } cable)
            {
                used.Add(cable);
            }
        }

        // The largest end first, while there is room; then the stiffest, then the longest.
        runs = [.. runs.OrderBy(run => run.Means == RunMeans.New ? 0 : 1)
            .ThenByDescending(run => run.Means == RunMeans.New ? run.Kind?.Plug.DiagonalMetres ?? 0 : 0)
            .ThenByDescending(run => run.Means == RunMeans.New ? run.Kind?.DiameterMetres ?? 0 : 0)
            .ThenByDescending(run => run.Means == RunMeans.New ? run.NeededMetres : 0)];
        return new SpotRuns(spot, runs, [.. FitsOf(runs)]) { Splitter = demand.Splitter };
    }

    private IEnumerable<PassageFit> FitsOf(IReadOnlyList<Run> runs) =>
        from passage in house.Cabling.Passages
        let added = runs.Where(run => run.Kind is not null && (run.Route?.Passages.Contains(passage.Name) ?? false)).Select(run => run.Kind!).ToArray()
        where added.Length > 0
        select new PassageFit(passage, added);

    private Run Of(Connection connection, HashSet<PulledCable> used)
    {
        if (LinkRates.NeededGbps(connection.Signal) is not { } rate)
        {
            return new Run(connection, RunMeans.New) { Gap = RunGap.Rate, ByCable = Carries.No };
        }

        PulledCable[] pulled = [.. house.Cabling.Cables.Where(cable => !used.Contains(cable) && cable.Kind.Use == CableUse.Picture)];
        PulledCable[] wrongWay = [.. pulled.Where(cable => cable.Kind.IsDirectional && Joins(cable.To, cable.From, connection))];
        PulledCable[] between = [.. pulled.Where(cable => Joins(cable.From, cable.To, connection) || (!cable.Kind.IsDirectional && Joins(cable.To, cable.From, connection)))];
        Carries Of(PulledCable cable) => cable.LengthMetres is { } length ? cable.Kind.Carries(rate, length)
            : cable.Kind.ReachAt(rate) is null ? Carries.No : Carries.Borderline;
        if (between.Where(cable => Of(cable) != Carries.No).MinBy(Of) is { } found)
        {
            return new Run(connection, RunMeans.Existing) { Existing = found, ByCable = Of(found), CableGbps = found.Kind.FastestGbps(found.LengthMetres ?? 0), WrongWay = wrongWay };
        }

        // Arrangements and spots share most of their connections.
        if (!bought.TryGetValue((connection.From, connection.To, rate), out Run? run))
        {
            run = IsBeside(connection.From, connection.To) ? Patch(connection, rate) : New(connection, rate);
            bought.Add((connection.From, connection.To, rate), run);
        }

        return run with { Connection = connection, WrongWay = wrongWay, TooSlow = between };
    }

    private Run Patch(Connection connection, double rate)
    {
        double needed = Apart(connection.From, connection.To) + PatchSlackMetres;
        (CableKind? kind, double buy, Carries carries) = Buy(pictureKinds, rate, needed);
        return new Run(connection, RunMeans.Patch)
        {
            SlackMetres = PatchSlackMetres, NeededMetres = needed, Kind = kind, BuyMetres = buy, ByCable = carries, CableGbps = kind?.FastestGbps(buy), Gap = kind is null ? RunGap.Kind : RunGap.None,
        };
    }

    private Run New(Connection connection, double rate)
    {
        Route? route = routes.Find(connection.From, connection.To);
        if (route is null)
        {
            return new Run(connection, RunMeans.New) { Gap = RunGap.Route };
        }

        double slack = SlackAt(connection.From) + SlackAt(connection.To), needed = route.LengthMetres + slack;
        CableKind[] passing = [.. pictureKinds.Where(kind => Through(route).All(passage => PassageFit.PassesEmpty(passage, kind.Plug)))];
        (CableKind? kind, double buy, Carries carries) = Buy(passing.Length > 0 ? passing : pictureKinds, rate, needed);
        return new Run(connection, RunMeans.New)
        {
            Route = route, SlackMetres = slack, NeededMetres = needed, Kind = kind, BuyMetres = buy, ByCable = carries, CableGbps = kind?.FastestGbps(buy), Gap = kind is null ? RunGap.Kind : RunGap.None,
        };
    }

    // The first kind of the table that surely carries it in a length it is sold in; failing that, the first that may.
    private static (CableKind? Kind, double BuyMetres, Carries Carries) Buy(CableKind[] kinds, double rate, double neededMetres) =>
        kinds.Select(kind => (Kind: (CableKind?)kind, Stock: kind.StockFor(neededMetres) ?? double.PositiveInfinity))
            .Select(pair => (pair.Kind, pair.Stock, Carries: double.IsFinite(pair.Stock) ? pair.Kind!.Carries(rate, pair.Stock) : Carries.No))
            .Where(offer => offer.Carries != Carries.No)
            .OrderBy(offer => offer.Carries)
            .FirstOrDefault((null, 0, Carries.No));

    private IEnumerable<Passage> Through(Route route) => house.Cabling.Passages.Where(passage => route.Passages.Contains(passage.Name));

    private bool Joins(CablePlace from, CablePlace to, Connection connection) => IsBeside(from, connection.From) && IsBeside(to, connection.To);

    // In one fixture, or close by in one room.
    private bool IsBeside(CablePlace a, CablePlace b) =>
        (a.Fixture is not null && a.Fixture == b.Fixture)
        || (a.LevelIndex == b.LevelIndex && Apart(a, b) <= PatchMetres && RoomOf(a) == RoomOf(b));

    private int RoomOf(CablePlace place)
    {
        if (!roomOf.TryGetValue(place, out int room))
        {
            roomOf.Add(place, room = rooms.RoomAt(place.LevelIndex, place.Plan));
        }

        return room;
    }

    private double Apart(CablePlace a, CablePlace b) =>
        a.Plan.At(house.Levels[a.LevelIndex].ElevationMetres + a.HeightMetres).DistanceTo(b.Plan.At(house.Levels[b.LevelIndex].ElevationMetres + b.HeightMetres));

    // Along walls and floors, where no route is known.
    private double Square(CablePlace a, CablePlace b) => Math.Abs(a.Plan.X - b.Plan.X) + Math.Abs(a.Plan.Y - b.Plan.Y)
        + Math.Abs(house.Levels[a.LevelIndex].ElevationMetres + a.HeightMetres - house.Levels[b.LevelIndex].ElevationMetres - b.HeightMetres);

    private double SlackAt(CablePlace end) =>
        end.Fixture is not null && house.Cabling.Devices.Any(device => device.Place.Fixture == end.Fixture) ? Run.RackSlackMetres : Run.EndSlackMetres;
}
