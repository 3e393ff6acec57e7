using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>NetTopologySuite as an independent judge of which walls a line crosses, over 100,000 random links.</summary>
public sealed class WallsCrossedTests
{
    [Theory]
    [InlineData(1, 30, 40_000)]
    [InlineData(2, 80, 40_000)]
    [InlineData(3, 300, 20_000)]
    public void Agree_with_NetTopologySuite(int seed, int count, int links)
    {
        // The seed is fixed: two walls met within a hair of each other are one to the tracer and two to the judge, and a
        // link in ten million has such a pair.
        var random = new Random(seed);
        Wall[] walls = [.. Enumerable.Range(0, count).Select(NextWall)];
        var scene = Scene.Compile(SimpleHouse.OfWalls(walls));
        STRtree<int> tree = TreeOf(walls);
        long crossed = 0;
        for (int link = 0; link < links; link++)
        {
            Point2 from = Next(), to = Next();
            List<string> judged = Judge(walls, tree, from, to);
            string[] met = [.. DirectLinks.Path(scene, from.At(1), to.At(1.5)).Crossings.Select(c => c.Name)];
            Assert.Equal(judged, met);
            crossed += met.Length;
        }

        Assert.True(crossed > links / 2, $"Only {crossed} crossings: too few walls to judge by.");

        Point2 Next() => new(12 * random.NextDouble(), 9 * random.NextDouble());

        Wall NextWall(int number)
        {
            Point2 start = Next(), step = new(4 * (random.NextDouble() - 0.5), 4 * (random.NextDouble() - 0.5));
            return SimpleHouse.FullWall($"{number}", start, start + step, 3);
        }
    }

    private static STRtree<int> TreeOf(Wall[] walls)
    {
        var tree = new STRtree<int>();
        for (int i = 0; i < walls.Length; i++)
        {
            tree.Insert(new Envelope(At(walls[i].Start), At(walls[i].End)), i);
        }

        tree.Build();
        return tree;
    }

    // The walls whose segment meets the link's, by robust predicates, nearest first.
    private static List<string> Judge(Wall[] walls, STRtree<int> tree, Point2 from, Point2 to)
    {
        Coordinate start = At(from), end = At(to);
        var intersector = new RobustLineIntersector();
        var found = new List<(double Distance, string Name)>();
        foreach (int i in tree.Query(new Envelope(start, end)))
        {
            intersector.ComputeIntersection(start, end, At(walls[i].Start), At(walls[i].End));
            if (intersector.HasIntersection)
            {
                found.Add((intersector.GetIntersection(0).Distance(start), walls[i].Name));
            }
        }

        return [.. found.OrderBy(f => f.Distance).Select(f => f.Name)];
    }

    private static Coordinate At(Point2 p) => new(p.X, p.Y);
}
