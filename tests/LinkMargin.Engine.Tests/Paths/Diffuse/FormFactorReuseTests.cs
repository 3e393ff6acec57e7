using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>The form factors of an edited house are those of the house before only where nothing is at another place.</summary>
public sealed class FormFactorReuseTests
{
    private static readonly Material Wall = SimpleHouse.Material("wall", 5), Other = SimpleHouse.Material("other", 9), Steel = SimpleHouse.Material("steel", 40);

    private static readonly Fixture Rack = new("rack", 0, new Point2(3.2, 2.5), 0.6, 0.6, 0, 0.1, 2.0, Steel) { IsShell = true };

    [Fact]
    public void Other_materials_and_open_sides_leave_them_as_they_are()
    {
        CellSurfaces before = Surfaces(Wall, Rack), after = Surfaces(Other, Rack with { OpenSides = BoxSides.North });
        after.Reuse(before);
        for (int cell = 0; cell < before.Count; cell++)
        {
            Assert.Same(before.FormFactorsOf(cell), after.FormFactorsOf(cell));
            AssertSame(Surfaces(Other, Rack with { OpenSides = BoxSides.North }).FormFactorsOf(cell), after.FormFactorsOf(cell));
        }
    }

    [Fact]
    public void What_stands_elsewhere_changes_those_of_its_room_alone()
    {
        Fixture moved = Rack with { Centre = new Point2(3.2, 1.9) };
        CellSurfaces before = Surfaces(Wall, Rack), after = Surfaces(Wall, moved), fresh = Surfaces(Wall, moved);
        after.Reuse(before);
        Assert.NotSame(before.FormFactorsOf(0), after.FormFactorsOf(0));
        Assert.Same(before.FormFactorsOf(1), after.FormFactorsOf(1));
        for (int cell = 0; cell < before.Count; cell++)
        {
            AssertSame(fresh.FormFactorsOf(cell), after.FormFactorsOf(cell));
        }
    }

    private static void AssertSame(FormFactors expected, FormFactors actual)
    {
        Assert.Equal(expected.Areas, actual.Areas);
        for (int facet = 0; facet < expected.Areas.Length; facet++)
        {
            Assert.Equal(expected.Of(facet), actual.Of(facet));
        }
    }

    private static CellSurfaces Surfaces(Material wall, Fixture rack)
    {
        var scene = Scene.Compile(SimpleHouse.Of(new Level("level", 0, 2.4)
        {
            Rooms = RoomGrid.Rooms([0, 4, 8], [0, 4]),
            Walls = [.. RoomGrid.Sides([0, 4, 8], [0, 4]).Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.4, wall))],
        }) with { Fixtures = [rack] });
        return SurfaceSurvey.Of(scene, new Cells(scene));
    }
}
