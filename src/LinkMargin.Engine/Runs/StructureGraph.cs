using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using QuikGraph;

namespace LinkMargin.Engine.Runs;

/// <summary>
/// Where cables may lie in a house, as a graph: along walls at the floor and under the ceiling, up and down walls, through walls, ceilings
/// and floors by a hole, in floors along the joists and across them by a hole each, and through passages.
/// <para>
/// Cables do not run through doorways or outdoors. A route may turn or leave at the corners of rooms, at the sides of openings, opposite the ends
/// and the passages, and at all of these on the other side of a wall or floor, so that one more passage never makes a route worse. A hole into
/// a floor with joists is made at corners and opposite ends and passages.
/// </para>
/// </summary>
internal sealed class StructureGraph
{
    // What hangs no farther than this below a ceiling may be reached through it, metres.
    private const double UnderCeilingMetres = 0.6;

    // Height of a cable along the floor, metres: doorways and glazed doors down to the floor block it.
    private const double SkirtingMetres = 0.1;

    // A hole through a floor without joists joins places at most this far out of line, metres.
    private const double SlabAsideMetres = 0.3;

    private readonly House house;
    private readonly RoomEdges edges;
    private readonly FloorSpace?[] floors;
    private readonly UndirectedGraph<int, StructureEdge> graph = new(allowParallelEdges: true);
    private readonly List<Point3> places = [];
    private readonly Dictionary<(RoomEdge Edge, double Stop, bool IsHigh), int> onEdges = [];
    private readonly Dictionary<CablePlace, int> ends = [];
    private readonly List<(int Level, int Node, bool IsHigh)> entries = []; // where a hole may lead into a floor

    /// <summary>Lays out a house.</summary>
    /// <param name="house">The house; passages that join nothing are left out.</param>
    /// <param name="ends">The places that cables begin and end at.</param>
    /// <param name="mayUse">Which passages may be used.</param>
    internal StructureGraph(House house, IEnumerable<CablePlace> ends, Func<Passage, bool> mayUse)
    {
        this.house = house;
        edges = new RoomEdges(house);
        floors = [.. house.Levels.Select((level, i) => FloorSpace.Of(house, i))];
        CablePlace[] all = [.. ends.Distinct()];
        Passage[] passages = [.. house.Cabling.Passages.Where(mayUse)];
        HashSet<(RoomEdge, double)> main = [];
        var reached = all.ToDictionary(end => end, end => edges.ReachedFrom(end.LevelIndex, end.Plan, main));
        var fromPassages = passages.ToDictionary(
            passage => passage, passage => (From: edges.ReachedFrom(passage.LowerLevel, passage.From, main), To: edges.ReachedFrom(passage.UpperLevel, passage.To, main)));
        edges.Share();
        AddWalls(main);
        AddHoles();
        foreach (CablePlace end in all)
        {
            AddEnd(end, reached[end]);
        }

        foreach (Passage passage in passages)
        {
            AddPassage(passage, fromPassages[passage].From, fromPassages[passage].To);
        }

        AddFloors();
    }

    /// <summary>Its nodes and edges; each edge leads both ways.</summary>
    internal IUndirectedGraph<int, StructureEdge> Graph => graph;

    /// <summary>The node of an end.</summary>
    internal int NodeOf(CablePlace end) => ends[end];

    /// <summary>Where a node is.</summary>
    internal Point3 PlaceOf(int node) => places[node];

    /// <summary>An edge as a leg of a route.</summary>
    internal RouteLeg LegOf(StructureEdge edge)
    {
        (Point3 from, Point3 to) = (places[edge.Source], places[edge.Target]);
        return new(edge.Kind, edge.Where, from, to, edge.LengthMetres, edge.Holes)
        {
            Corner = edge.Kind != LegKind.ToWall ? null : ends.ContainsValue(edge.Source) ? to.Plan.At(from.Z) : from.Plan.At(to.Z),
            InnerBends = edge.Kind == LegKind.ThroughPassage ? house.Cabling.Passages.FirstOrDefault(passage => passage.Name == edge.Where)?.Bends ?? 0 : 0,
        };
    }

    /// <summary>The space in the floor above a level, where there is one.</summary>
    internal FloorSpace FloorAbove(string level) => floors.Where((_, i) => house.Levels[i].Name == level).First()!;

    private void AddWalls(HashSet<(RoomEdge, double)> main)
    {
        for (int i = 0; i < house.Levels.Count; i++)
        {
            Level level = house.Levels[i];
            Dictionary<(int Room, Point2 Corner, bool IsHigh), int> corners = [];
            foreach (RoomEdge edge in edges.OfLevel(i).Where(edge => edge.Wall is not null))
            {
                foreach (double stop in edge.Stops)
                {
                    bool isCorner = stop == 0 || stop == edge.LengthMetres;
                    bool isMain = isCorner || main.Contains((edge, stop));
                    int low = NodeOn(edge, stop, false, isCorner ? corners : null), high = NodeOn(edge, stop, true, isCorner ? corners : null);
                    if (edge.IsSolid(stop))
                    {
                        Join(low, high, LegKind.Riser, level.Rooms[edge.Room].Name, level.HeightMetres, 0);
                        if (isMain)
                        {
                            entries.Add((i, high, true));
                            entries.Add((i, low, false));
                        }
                    }
                }

                foreach (bool isHigh in new[] { false, true })
                {
                    double height = isHigh ? level.HeightMetres : SkirtingMetres;
                    foreach ((double from, double to) in edge.Stops.Zip(edge.Stops.Skip(1)).Where(pair => edge.IsFree(pair.First, pair.Second, height)))
                    {
                        Join(onEdges[(edge, from, isHigh)], onEdges[(edge, to, isHigh)], isHigh ? LegKind.AlongCeiling : LegKind.AlongFloor, level.Rooms[edge.Room].Name, to - from, 0);
                    }
                }
            }
        }
    }

    // Through walls where both sides are wall; through floors without joists where there is a wall above and below.
    private void AddHoles()
    {
        for (int i = 0; i < house.Levels.Count; i++)
        {
            foreach ((RoomEdge one, RoomEdge other) in RoomEdges.Beside(edges.OfLevel(i), edges.OfLevel(i)).Where(pair => pair.One.Room < pair.Other.Room))
            {
                foreach ((double stop, double across) in Facing(one, other, RoomEdge.StopSlackMetres))
                {
                    foreach (bool isHigh in new[] { false, true })
                    {
                        int from = onEdges[(one, stop, isHigh)], to = onEdges[(other, across, isHigh)];
                        Wall wall = one.Wall ?? other.Wall!;
                        Join(from, to, LegKind.ThroughWall, wall.Name, Math.Max(places[from].DistanceTo(places[to]), 2 * wall.HalfThicknessMetres), 1);
                    }
                }
            }

            if (i + 1 < house.Levels.Count && floors[i] is null)
            {
                foreach ((RoomEdge one, RoomEdge other) in RoomEdges.Beside(edges.OfLevel(i), edges.OfLevel(i + 1)))
                {
                    foreach ((double stop, double above) in Facing(one, other, SlabAsideMetres).Where(pair => !IsVoid(i, one.At(pair.Stop))))
                    {
                        int from = onEdges[(one, stop, true)], to = onEdges[(other, above, false)];
                        Join(from, to, LegKind.ThroughSlab, house.Levels[i].Name, places[from].DistanceTo(places[to]), 1);
                    }
                }
            }
        }
    }

    private bool IsVoid(int level, Point2 at) => house.Levels[level].Above?.Voids.Any(hole => hole.DepthOf(at) > -RoomEdge.StopSlackMetres) ?? false;

    // Pairs of places on two edges that lie opposite each other, with wall at both.
    private static IEnumerable<(double Stop, double Across)> Facing(RoomEdge one, RoomEdge other, double aside) =>
        one.Wall is null || other.Wall is null ? [] : one.Stops
            .Where(one.IsSolid)
            .SelectMany(stop => other.Stops
                .Where(across => other.IsSolid(across) && Math.Abs(one.Abreast(other.At(across)) - stop) <= aside)
                .Select(across => (stop, across)))
            .Where(pair => one.At(pair.stop).DistanceTo(other.At(pair.across)) <= RoomEdges.ThickestWallMetres + aside);

    private void AddEnd(CablePlace end, List<(RoomEdge Edge, double Stop)> reached)
    {
        Level level = house.Levels[end.LevelIndex];
        double height = Math.Clamp(end.HeightMetres, 0, level.HeightMetres);
        int node = NodeAt(end.Plan.At(level.ElevationMetres + height));
        ends.Add(end, node);
        foreach ((RoomEdge edge, double stop) in reached)
        {
            double away = end.Plan.DistanceTo(edge.At(stop));
            Join(node, onEdges[(edge, stop, false)], LegKind.ToWall, level.Rooms[edge.Room].Name, away + height, 0);
            Join(node, onEdges[(edge, stop, true)], LegKind.ToWall, level.Rooms[edge.Room].Name, away + level.HeightMetres - height, 0);
        }

        if (height >= level.HeightMetres - UnderCeilingMetres)
        {
            entries.Add((end.LevelIndex, node, true));
        }
    }

    private void AddPassage(Passage passage, List<(RoomEdge Edge, double Stop)> from, List<(RoomEdge Edge, double Stop)> to)
    {
        (int bottomLow, int bottomHigh) = Shaft(passage.LowerLevel, passage.From, from);
        (int topLow, int topHigh) = Shaft(passage.UpperLevel, passage.To, to);
        foreach ((int one, int other) in passage.LowerLevel == passage.UpperLevel
            ? new[] { (bottomLow, topLow), (bottomHigh, topHigh) } : [(bottomHigh, topLow)])
        {
            Point3 a = places[one], b = places[other];
            Join(one, other, LegKind.ThroughPassage, passage.Name, a.Plan.DistanceTo(b.Plan) + Math.Abs(a.Z - b.Z), 0);
        }

        (int Low, int High) Shaft(int index, Point2 at, List<(RoomEdge Edge, double Stop)> reached)
        {
            Level level = house.Levels[index];
            int low = NodeAt(at.At(level.ElevationMetres)), high = NodeAt(at.At(level.CeilingMetres));
            if (passage.LowerLevel != passage.UpperLevel)
            {
                Join(low, high, LegKind.ThroughPassage, passage.Name, level.HeightMetres, 0);
            }

            foreach ((RoomEdge edge, double stop) in reached)
            {
                double away = at.DistanceTo(edge.At(stop));
                Join(low, onEdges[(edge, stop, false)], LegKind.ToPassage, level.Rooms[edge.Room].Name, away, 0);
                Join(high, onEdges[(edge, stop, true)], LegKind.ToPassage, level.Rooms[edge.Room].Name, away, 0);
            }

            return (low, high);
        }
    }

    // In floors with joists: from below through the ceiling, from above through the floor, and between any two places in it.
    private void AddFloors()
    {
        for (int i = 0; i + 1 < house.Levels.Count; i++)
        {
            if (floors[i] is not { } floor)
            {
                continue;
            }

            string name = house.Levels[i].Name;
            var net = new FloorNet(floor, plan => NodeAt(plan.At(floor.HeightMetres)), (one, other, metres, joists) => Join(one, other, LegKind.InFloor, name, metres, joists));
            foreach (Point2 turn in floor.Turns)
            {
                _ = net.At(turn).Count();
            }

            foreach ((int level, int node, bool isHigh) in entries.Where(entry => entry.IsHigh ? entry.Level == i : entry.Level == i + 1))
            {
                foreach (int within in net.At(places[node].Plan))
                {
                    Join(node, within, isHigh ? LegKind.ThroughCeiling : LegKind.ThroughFloor, house.Levels[level].Name, Math.Abs(places[node].Z - floor.HeightMetres), 1);
                }
            }

            net.JoinLines();
        }
    }

    private int NodeOn(RoomEdge edge, double stop, bool isHigh, Dictionary<(int Room, Point2 Corner, bool IsHigh), int>? corners)
    {
        Level level = house.Levels[edge.Level];
        Point2 at = stop == edge.LengthMetres ? edge.End : edge.At(stop);
        if (corners is null || !corners.TryGetValue((edge.Room, at, isHigh), out int node))
        {
            node = NodeAt(at.At(isHigh ? level.CeilingMetres : level.ElevationMetres));
            corners?.Add((edge.Room, at, isHigh), node);
        }

        onEdges[(edge, stop, isHigh)] = node;
        return node;
    }

    private int NodeAt(Point3 at)
    {
        places.Add(at);
        graph.AddVertex(places.Count - 1);
        return places.Count - 1;
    }

    private void Join(int one, int other, LegKind kind, string where, double lengthMetres, int holes) =>
        graph.AddEdge(new StructureEdge(one, other, kind, where, lengthMetres, holes));
}
