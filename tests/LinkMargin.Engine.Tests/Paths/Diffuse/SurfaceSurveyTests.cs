using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>What the power balance is made of, against areas of a house that can be worked out in the head.</summary>
public sealed class SurfaceSurveyTests
{
    private static readonly FloorBuildUp Slab =
        new("slab", [new FloorLayer(SimpleHouse.Material("slab", 16), 0.2, null)], "invented for tests");

    [Fact]
    public void Floors_and_ceilings_are_booked_once_from_one_side()
    {
        // A room of 4 m by 4 m, and over it one of 6 m by 4 m that hangs over out of doors by 2 m. No walls.
        House house = SimpleHouse.Of(
            new Level("ground", 0, 2.4) { Rooms = [Room(4)], Above = new FloorAbove(Slab, null, []) },
            new Level("upper", 2.6, 2.4) { Rooms = [Room(6)] });
        (int Cell, int Other, double SquareMetres)[] expected =
        [
            (0, Cells.Outdoors, 16), // the ground
            (0, 1, 16), // the floor between them
            (1, Cells.Outdoors, 8), // what hangs over
            (1, Cells.Outdoors, 24), // the roof
        ];
        Assert.Equal(expected, Booked(house));
    }

    [Fact]
    public void A_hole_in_a_floor_is_booked_once_as_nothing()
    {
        Polygon hole = new([new(1, 1), new(2, 1), new(2, 3), new(1, 3)]);
        House house = SimpleHouse.Of(
            new Level("ground", 0, 2.4) { Rooms = [Room(4)], Above = new FloorAbove(Slab, null, [hole]) },
            new Level("upper", 2.6, 2.4) { Rooms = [Room(4)] });
        Scene scene = Scene.Compile(house);
        Panel[] between = [.. SurfaceSurvey.Of(scene, new Cells(scene)).Panels.Where(panel => panel.One == 0 && panel.Other == 1)];
        Assert.Equal([14, 2], between.Select(panel => Math.Round(panel.SquareMetres, 9)));
        Assert.Equal([false, true], between.Select(panel => panel.Sheets.Length == 0));
    }

    private static (int Cell, int Other, double SquareMetres)[] Booked(House house)
    {
        Scene scene = Scene.Compile(house);
        return [.. SurfaceSurvey.Of(scene, new Cells(scene)).Panels.Select(panel => (panel.One, panel.Other, Math.Round(panel.SquareMetres, 9))).Order()];
    }

    private static Room Room(double lengthMetres) =>
        new("room", new Polygon([new(0, 0), new(lengthMetres, 0), new(lengthMetres, 4), new(0, 4)]));
}
