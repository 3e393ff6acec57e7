using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>What leaves a closed box has passed one of its panels, by whichever path it comes.</summary>
public sealed class ClosedShellTests
{
    private const double PanelDb = 60;

    // Edges between panels of one material are none: what a path gains over a boundless panel is rounding. What it gains or loses beside a
    // surface that it runs along is left out.
    private const double LeastDb = PanelDb - 1;

    private static readonly Material Panel = SimpleHouse.Material("panel", PanelDb), Wall = SimpleHouse.Material("wall", 6);

    private static readonly Gen<(Fixture Box, Point3 Inside, Point3 Hands)> Boxes =
        from sizeX in Gen.Double[0.4, 1.2]
        from sizeY in Gen.Double[0.4, 0.9]
        from turn in Gen.OneOf(Gen.Const(0.0), Gen.Double[-90, 90])
        from bottom in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.1, 0.8])
        from high in Gen.Double[0.3, 1.3]
        from x in Gen.Double[-0.4, 0.4]
        from y in Gen.Double[-0.4, 0.4]
        from z in Gen.Double[0.1, 0.9]
        from east in Gen.Double[0.3, 5.7]
        from north in Gen.Double[0.3, 3.7]
        from up in Gen.Double[0.2, 2.2]
        let box = new Fixture("box", 0, new Point2(3.1, 1.8), sizeX, sizeY, turn, bottom, bottom + high, Panel) { IsShell = true }
        let heart = box.Centre + Turned(new Point2(x * sizeX, y * sizeY), turn)
        select (box, heart.At(bottom + (z * high)), new Point3(east, north, up));

    [Fact, Law]
    public void No_path_out_of_a_closed_box_is_clear_of_its_panels() => Boxes
        .Where(c => !c.Box.Contains(c.Hands.Plan, c.Hands.Z, 0.05))
        .ForAll(
            c =>
            {
                House house = Room(c.Box);
                foreach ((Point3 console, Point3 hands) in new[] { (c.Inside, c.Hands), (c.Hands, c.Inside) })
                {
                    Assert.All(
                        OneLink.Of(house, console, hands).Paths.Where(path => path.Path.Kind != PathKind.Diffuse),
                        path => Assert.InRange(OneLink.ExcessDb(path) - path.SurfacesDb, LeastDb, double.PositiveInfinity));
                }
            },
            cases: 300);

    private static House Room(Fixture box) => SimpleHouse.Of(new Level("level", 0, 2.4)
    {
        Rooms = RoomGrid.Rooms([0, 6], [0, 4]),
        Walls = [.. RoomGrid.Sides([0, 6], [0, 4]).Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.4, Wall))],
    }) with
    {
        Fixtures = [box],
    };

    private static Point2 Turned(Point2 at, double degrees)
    {
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
        return new Point2((at.X * cos) - (at.Y * sin), (at.X * sin) + (at.Y * cos));
    }
}
