using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>The ways in a floor's space: against a way from each place to each, and how few there are of them.</summary>
public sealed class FloorNetTests
{
    /// <summary>Joists 0.4 m apart at y = 0, 0.4 and so on: 1.2 m across them is three, in however many steps one goes.</summary>
    [Fact]
    public void Many_places_on_the_way_save_no_joist()
    {
        Point2[] steps = [.. Enumerable.Range(0, 13).Select(i => new Point2(1, 1.05 + (0.1 * i)))];
        Assert.Equal(3, Best(Floor(0), steps, steps[0], steps[^1]).Joists);
        Assert.Equal(3, Best(Floor(0), [steps[0], steps[^1]], steps[0], steps[^1]).Joists);
    }

    /// <summary>From a place at a joist it is free to go to either side of it.</summary>
    [Fact]
    public void A_place_at_a_joist_is_on_both_sides_of_it()
    {
        Point2 at = new(1, 1.2), below = new(3, 1), above = new(3, 1.4);
        Assert.Equal(0, Best(Floor(0), [at, below, above], at, below).Joists);
        Assert.Equal(0, Best(Floor(0), [at, below, above], at, above).Joists);
        Assert.Equal(1, Best(Floor(0), [below, above], below, above).Joists);
    }

    /// <summary>A void between: round its corner, and never through it.</summary>
    [Fact]
    public void It_goes_round_a_void()
    {
        FloorSpace floor = Floor(0, new Polygon([new(2, 1), new(4, 1), new(4, 3), new(2, 3)]));
        Point2 west = new(1, 1.9), east = new(5, 2.1);
        (int joists, double metres) = Best(floor, [west, east], west, east);
        Assert.InRange(metres, 4 + 0.7 + 0.9, 4 + 0.9 + 1.1); // down to y = 1, or up to 0.2 m over its edge, and up again
        Assert.Equal(2 + 3, joists); // 1.6 and 1.2; 1.2, 1.6 and 2
    }

    /// <summary>To within the centimetre at which places share a line, at either end; joists run any way.</summary>
    [Fact, Law]
    public void It_is_as_good_as_a_way_from_each_place_to_each() =>
        Gen.Select(Gen.OneOf(Gen.Const(0.0), Gen.Const(90.0), Gen.Double[0, 180]), Gen.Select(Gen.Double[0.2, 5.8], Gen.Double[0.2, 3.8]).Array[2, 12], Gen.Double[1, 4], Gen.Double[1, 2]).ForAll(
            (run, places, x, y) =>
            {
                FloorSpace floor = Floor(run, new Polygon([new(x, y), new(x + 1.5, y), new(x + 1.5, y + 1), new(x, y + 1)]));
                Point2[] all = [.. places.Select(place => new Point2(place.Item1, place.Item2)).Where(place => floor.BaysAt(place).Any())];
                if (all.Length < 2)
                {
                    return;
                }

                (int joists, double metres) = Best(floor, all, all[0], all[^1]);
                (int plainJoists, double plainMetres) = Plain(floor, all);
                Assert.True(joists < plainJoists || (joists == plainJoists && metres <= plainMetres + 0.02), $"{joists}, {metres} against {plainJoists}, {plainMetres}");
                Assert.True(metres >= all[0].DistanceTo(all[^1]) - 0.1);
            },
            cases: 60,
            also: [6, 15, 16]);

    /// <summary>Four times the places take hardly more than four times the legs: with a way from each to each it would be sixteen times.</summary>
    [Fact]
    public void Its_legs_grow_little_faster_than_its_places()
    {
        double few = Legs(100), many = Legs(400);
        Assert.InRange(many / few, 2, 5);

        static int Legs(int count)
        {
            int legs = 0, nodes = 0;
            var net = new FloorNet(Floor(0), _ => nodes++, (_, _, _, _) => legs++);
            for (int i = 0; i < count; i++)
            {
                _ = net.At(new Point2(0.1 + (5.8 * (i * 0.618034 % 1)), 0.1 + (3.8 * i / count))).Count();
            }

            net.JoinLines();
            return legs;
        }
    }

    // The best way in the net, by joists and then metres.
    private static (int Joists, double Metres) Best(FloorSpace floor, Point2[] places, Point2 from, Point2 to)
    {
        List<(int One, int Other, double Metres, int Joists)> legs = [];
        int nodes = 0;
        var net = new FloorNet(floor, _ => nodes++, (one, other, metres, joists) => legs.Add((one, other, metres, joists)));
        foreach (Point2 place in places.Concat(floor.Turns))
        {
            _ = net.At(place).Count();
        }

        net.JoinLines();
        return Shortest(nodes, legs, [.. net.At(from)], [.. net.At(to)]);
    }

    // A leg along and across, or across and along, between any two places and corners.
    private static (int Joists, double Metres) Plain(FloorSpace floor, Point2[] places)
    {
        Point2[] all = [.. places.Concat(floor.Turns).SelectMany(floor.BaysAt)];
        List<(int One, int Other, double Metres, int Joists)> legs = [];
        for (int i = 0; i < all.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                (Point2 a, Point2 b) = (all[i], all[j]);
                if ((floor.IsClearAlong(a.X, b.X, a.Y) && floor.IsClearAcross(b.X, a.Y, b.Y)) || (floor.IsClearAcross(a.X, a.Y, b.Y) && floor.IsClearAlong(a.X, b.X, b.Y)))
                {
                    legs.Add((i, j, Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y), floor.Crossed(a.Y, b.Y)));
                }
            }
        }

        int[] Of(Point2 place) => [.. floor.BaysAt(place).Select(bay => Array.IndexOf(all, bay))];
        return Shortest(all.Length, legs, Of(places[0]), Of(places[^1]));
    }

    // Relaxed until nothing changes.
    private static (int Joists, double Metres) Shortest(int nodes, List<(int One, int Other, double Metres, int Joists)> legs, int[] from, int[] to)
    {
        const double Joist = 1e4;
        double[] costs = [.. Enumerable.Range(0, nodes).Select(node => from.Contains(node) ? 0 : double.PositiveInfinity)];
        bool hasChanged = true;
        while (hasChanged)
        {
            hasChanged = false;
            foreach ((int one, int other, double metres, int joists) in legs)
            {
                double cost = metres + (Joist * joists);
                foreach ((int a, int b) in new[] { (one, other), (other, one) })
                {
                    if (costs[a] + cost < costs[b])
                    {
                        costs[b] = costs[a] + cost;
                        hasChanged = true;
                    }
                }
            }
        }

        double best = to.Min(node => costs[node]);
        return double.IsFinite(best) ? ((int)(best / Joist), best % Joist) : (int.MaxValue, double.PositiveInfinity);
    }

    // 6 m by 4 m.
    private static FloorSpace Floor(double joistDegrees, params Polygon[] voids)
    {
        var joist = new Ribs(SimpleHouse.Material("joist", 5), 0.05, 0.2, 0.4);
        var floor = new FloorAbove(new FloorBuildUp("floor", [new FloorLayer(null, 0.2, joist)], "invented for tests"), new JoistLayout(joistDegrees, 0.4, null), voids);
        Room room = new("den", new Polygon([new(0, 0), new(6, 0), new(6, 4), new(0, 4)]));
        return FloorSpace.Of(SimpleHouse.Of(new Level("low", 0, 2.4) { Rooms = [room], Above = floor }, new Level("high", 2.6, 2.4) { Rooms = [room] }), 0)!;
    }
}
