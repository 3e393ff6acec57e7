using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>Lines that set out from one place meet the same walls, found in order round it, as any line does.</summary>
public sealed class WallsAroundTests
{
    private static readonly Gen<Point3> Place = Gen.Select(RandomPlace.OnPlan, Gen.Double[-0.5, 8], (plan, z) => plan.At(z));

    [Fact, Law]
    public void A_line_from_the_place_meets_what_any_line_meets() =>
        Gen.Select(RandomHouse.Any, Place, Place.Array[30]).ForAll(
            (house, from, places) =>
            {
                var scene = Scene.Compile(house);
                WallsAround[] around = scene.Around(from);
                foreach (Point3 to in places)
                {
                    Assert.Equal(Met(scene, from, to, null), Met(scene, from, to, around));
                }
            },
            cases: 300);

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 1)]
    [InlineData(-1, 0)]
    [InlineData(0, -1)]
    [InlineData(-1, -1e-12)]
    [InlineData(1, -1e-300)]
    [InlineData(-1e-300, 1)]
    public void Walls_across_the_borders_of_the_first_sectors_are_met(double east, double north)
    {
        var line = new Point2(east, north);
        Point2 across = new(-line.Y, line.X);
        Scene scene = Scene.Compile(SimpleHouse.OfWalls(
            SimpleHouse.FullWall("wall", line - across, line + across, 3)));
        Point3 from = default(Point2).At(1);
        Assert.Single(Met(scene, from, (2 * line).At(1), scene.Around(from)));
        Assert.Empty(Met(scene, from, (-2 * line).At(1), scene.Around(from)));
    }

    [Fact]
    public void A_place_on_a_wall_meets_it_in_every_direction()
    {
        Scene scene = Scene.Compile(SimpleHouse.OfWalls(
            SimpleHouse.FullWall("wall", new Point2(-2, 0), new Point2(2, 0), 3)));
        Point3 from = default(Point2).At(1);
        WallsAround[] around = scene.Around(from);
        for (int degrees = 5; degrees < 360; degrees += 10)
        {
            (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
            Assert.Single(Met(scene, from, new Point3(cos, sin, 1), around));
        }
    }

    // Before joints are made one: of two walls alike in one place either may be kept.
    private static string[] Met(Scene scene, Point3 from, Point3 to, WallsAround[]? around)
    {
        var buffer = new TraceBuffer();
        for (int i = 0; i < scene.Storeys.Count; i++)
        {
            scene.Storeys[i].Walls.Trace(from, to, around?[i], buffer);
        }

        return [.. buffer.Hits.ToArray().Select(hit => $"{hit.Along:R} {hit.Level} {hit.Name} {hit.Material} {hit.CosIncidence:R}").Order(StringComparer.Ordinal)];
    }
}
