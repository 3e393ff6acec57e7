using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Ways round through open doors, against the single and double edges of Recommendation ITU-R P.526-16.</summary>
public sealed class RoundTheCornerTests(ITestOutputHelper output)
{
    private static readonly Point3 Console = new(0, 0, 1);

    private static readonly double[] GapWidths = [0.9, 0.1, 0.01, 0.001, 1e-5];

    [Theory]
    [InlineData(4, 2)]
    [InlineData(3, 3)]
    [InlineData(6, 1.5)]
    public void One_bend_is_a_knife_edge_at_its_detour(double beyondMetres, double jambMetres)
    {
        // A wall at 3 m; its door stands from the jamb outwards, well off the straight line.
        Point3 hands = new(3 + beyondMetres, 0, 1);
        LinkBudget budget = OneLink.Of(SimpleHouse.OfWalls(WithDoor(3, jambMetres)), Console, hands);
        PathBudget way = Through(budget, "door 3");

        // It bends a hand's breadth, 4 cm, clear of the jamb; at the jamb itself the detour is the edge's own.
        Point3 edge = way.Path.Points[1], jamb = new(3, jambMetres, 1);
        Assert.Equal(0.04, edge.DistanceTo(jamb), 0.001);
        Assert.Equal(EdgeDb(Console, edge, hands), way.DiffractionDb, 1e-6);
        Assert.Equal(Console.DistanceTo(edge) + edge.DistanceTo(hands), way.Path.LengthMetres, 1e-9);

        double wholeDb = OneLink.ExcessDb(way), edgeDb = EdgeDb(Console, jamb, hands);
        output.WriteLine(FormattableString.Invariant($"round a jamb {jambMetres} m aside: {wholeDb:F2} dB; a single edge {edgeDb:F2} dB"));

        // The wall beside the last leg takes something of it, on top of the edge: up to the half of a field on its own edge.
        Assert.InRange(wholeDb, edgeDb - 0.5, edgeDb + 6.1);
    }

    [Theory]
    [InlineData(2.5, -1.5)]
    [InlineData(2, 2.5)]
    public void Two_bends_are_the_published_construction(double firstJamb, double secondJamb)
    {
        // Two walls with doors, one behind the other.
        Point3 hands = new(8, 0, 1);
        LinkBudget budget = OneLink.Of(SimpleHouse.OfWalls(WithDoor(3, firstJamb), WithDoor(5.5, secondJamb)), Console, hands);
        PathBudget[] ways = [.. budget.Paths.Where(path => path.Path.Kind == PathKind.Diffracted && path.Turns.Count == 2)];
        Assert.NotEmpty(ways);
        Assert.All(ways, way =>
        {
            Point3[] points = [.. way.Path.Points];
            Assert.Equal(4, points.Length);
            Assert.Equal(MultipleEdges.LossDb(points, OneLink.WavelengthMetres), way.DiffractionDb, 1e-6);

            // Two edges lose at least what the harder one alone does.
            double firstDb = EdgeDb(points[0], points[1], points[3]), secondDb = EdgeDb(points[0], points[2], points[3]);
            Assert.True(way.DiffractionDb >= Math.Max(firstDb, secondDb) - 1e-9);
        });
    }

    [Fact]
    public void A_way_through_a_gap_fades_as_the_gap_narrows()
    {
        // A full-height gap 1.5 m off the straight line, in a wall that nothing passes.
        double[] powers =
        [
            .. GapWidths.Select(width =>
            {
                var wall = new Wall("wall", new Point2(3, -20), new Point2(3, 20), 0, SimpleHouse.HeightMetres, OneLink.Opaque)
                {
                    Openings = [new Opening("gap", OpeningKind.Gap, 21.5, width, 0, SimpleHouse.HeightMetres, null, true)],
                };
                LinkBudget link = OneLink.Of(SimpleHouse.OfWalls(wall), new Point3(0, 0, 1), new Point3(6, 0, 1));
                return link.Paths
                    .Where(path => path.Path.Kind == PathKind.Diffracted && path.Turns.Any(turn => turn.Name == "gap"))
                    .Sum(path => Decibels.ToPowerRatio(-path.LossDb));
            }),
        ];

        Assert.Equal(powers.OrderDescending(), powers);
        Assert.True(powers[0] > 0);
        Assert.True(powers[3] < 0.01 * powers[0]);
        Assert.True(powers[^1] < 1e-4 * powers[0]);
    }

    [Fact]
    public void A_shut_door_has_no_way_round_through_it()
    {
        Wall wall = WithDoor(3, 2);
        Wall shut = wall with { Openings = [.. wall.Openings.Select(door => door with { IsOpen = false })] };
        LinkBudget open = OneLink.Of(SimpleHouse.OfWalls(wall), Console, new Point3(7, 0, 1));
        LinkBudget closed = OneLink.Of(SimpleHouse.OfWalls(shut), Console, new Point3(7, 0, 1));
        Assert.Contains(open.Paths, path => path.Turns.Any(turn => turn.Name == "door 3"));
        Assert.DoesNotContain(closed.Paths, path => path.Turns.Any(turn => turn.Name == "door 3"));
        Assert.True(closed.PathLossDb > open.PathLossDb + 3);
    }

    private static double EdgeDb(Point3 from, Point3 over, Point3 to) => KnifeEdge.LossDb(KnifeEdge.ParameterOfDetour(
        KnifeEdge.DetourMetres(from, over, to), true, OneLink.WavelengthMetres));

    // The strongest way through a door and nothing else.
    private static PathBudget Through(LinkBudget budget, string door) =>
        budget.Paths.First(path => path.Path.Kind == PathKind.Diffracted && path.Turns is [PathTurn turn] && turn.Name == door);

    // A wall from far to far across x that nothing passes; its door has one jamb here and goes on for 0.9 m, away from the line.
    private static Wall WithDoor(double x, double jamb) => new("wall", new Point2(x, -20), new Point2(x, 20), 0, SimpleHouse.HeightMetres, OneLink.Opaque)
    {
        Openings =
        [
            new Opening(
                FormattableString.Invariant($"door {x}"),
                OpeningKind.Door,
                20 + (jamb > 0 ? jamb : jamb - 0.9),
                0.9,
                0,
                SimpleHouse.HeightMetres,
                OneLink.Opaque,
                true),
        ],
    };
}
