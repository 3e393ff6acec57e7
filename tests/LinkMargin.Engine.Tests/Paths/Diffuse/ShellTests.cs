using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>What leaves a hollow fixture by the diffuse field: by its panels, by what covers them, and to the side it faces.</summary>
public sealed class ShellTests
{
    private static readonly BoxSides[] Sides =
        [BoxSides.South, BoxSides.East, BoxSides.North, BoxSides.West, BoxSides.Bottom, BoxSides.Top];

    // Sheets that reflect alike, from the most opaque to the least: what the next passes more it turns less to heat. Then none.
    private static readonly Material?[] Ladder =
        [SimpleHouse.Material("thick", 60), SimpleHouse.Material("plain", 30), SimpleHouse.Material("thin", 20), SimpleHouse.Material("pierced", 15), null];

    [Fact, Law]
    public void The_power_that_leaves_a_shell_never_falls_when_a_panel_is_swapped_for_a_more_transparent_one() =>
        Gen.Select(Gen.Int[0, Ladder.Length - 1].Array[6], Gen.Int[0, 5], Place).ForAll(
            (panels, changed, inside) =>
            {
                double before = Leaving(panels, inside);
                for (int more = panels[changed] + 1; more < Ladder.Length; more++)
                {
                    double after = Leaving([.. panels.Select((panel, side) => side == changed ? more : panel)], inside);
                    Assert.True(after >= before - 1e-12, $"{before} W leave, and {after} W with {Ladder[more]?.Name ?? "nothing"} on {Sides[changed]}");
                    before = after;
                }
            },
            cases: 40);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.01)]
    [InlineData(0.04)]
    public void A_door_that_stands_before_an_open_side_closes_it_as_a_panel_does(double apartMetres)
    {
        Material steel = SimpleHouse.Material("steel", 40);
        Fixture rack = Rack(steel) with { OpenSides = BoxSides.South };
        Fixture door = new("door", 0, new Point2(3, 1.7 - apartMetres - 0.001), 0.6, 0.002, 0, 0.2, 2.0, steel);
        House open = InRoom(rack), covered = InRoom(rack, door), closed = InRoom(rack with { OpenSides = BoxSides.None });
        Point3 inside = new(3.1, 2.1, 1), away = new(1, 1, 1.2);
        Assert.True(Db(open) - Db(covered) > 10);
        Assert.Equal(Db(closed), Db(covered), 0.5);
        Assert.Equal(Db(open), Db(InRoom(rack, door with { Centre = new Point2(3, 1.7 - 0.2) })), 1.0);

        double Db(House house) => Decibels.FromPowerRatio(new DiffuseHouse(house).Of(inside).At(away));
    }

    [Fact]
    public void A_cupboard_before_a_doorway_closes_it()
    {
        Material wall = SimpleHouse.Material("wall", 40), steel = SimpleHouse.Material("steel", 40);
        Opening gap = new("gap", OpeningKind.Gap, 1.2, 0.9, 0, 2, null, true);
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 4, 8], [0, 4]);
        House House(params Fixture[] fixtures) => SimpleHouse.Of(new Level("level", 0, 2.4)
        {
            Rooms = RoomGrid.Rooms([0, 4, 8], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.4, wall) { Openings = side.IsOuter ? [] : [gap] })],
        }) with
        {
            Fixtures = fixtures,
        };
        double middle = Math.Min(sides.First(side => !side.IsOuter).Start.Y, sides.First(side => !side.IsOuter).End.Y) + 1.65;
        Point3 console = new(1, 1, 1), place = new(6, 2, 1);
        double Db(House house) => Decibels.FromPowerRatio(new DiffuseHouse(house).Of(console).At(place));
        double open = Db(House()), shut = Db(House(new Fixture("cupboard", 0, new Point2(4.07, middle), 0.04, 1.2, 0, 0, 2.2, steel)));
        Assert.True(open - shut > 10, $"{open} dB open, {shut} dB with a steel cupboard before it");
    }

    // Outdoors has no mean field: what a place there sees must not vanish at the open side of a shell.
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(0.5)]
    public void The_density_is_the_same_on_both_sides_of_an_open_side_that_faces_outdoors(double across)
    {
        Material steel = SimpleHouse.Material("steel", 40);
        Fixture near = Rack(steel) with { OpenSides = BoxSides.West, Centre = new Point2(8, 3) };
        Fixture far = Rack(steel) with { OpenSides = BoxSides.East, Centre = new Point2(3, 2.5) };
        var house = new DiffuseHouse(SimpleHouse.OfWalls() with { Fixtures = [near, far] });
        DiffuseField field = house.Of(new Point3(3, 2.5, 1));
        double west = near.Corners().Min(corner => corner.X), south = near.Corners().Min(corner => corner.Y);
        Point3 At(double metres) => new(west + metres, south + (across * near.SizeY), 0.9);
        Assert.Equal(Db(-1e-6), Db(1e-6), 0.2);
        for (double metres = -0.2; metres < 0.05; metres += 0.01)
        {
            Assert.Equal(Db(metres), Db(metres + 0.01), 1.5);
        }

        // A link has the same loss both ways.
        Assert.Equal(Db(0.03), Decibels.FromPowerRatio(house.Of(At(0.03)).At(new Point3(3, 2.5, 1))), 1e-6);

        double Db(double metres) => Decibels.FromPowerRatio(field.At(At(metres)));
    }

    [Fact]
    public void A_rack_open_to_one_side_is_louder_there_than_behind()
    {
        House house = InRoom(Rack(SimpleHouse.Material("steel", 40)) with { OpenSides = BoxSides.West });
        DiffuseField field = new DiffuseHouse(house).Of(new Point3(3, 2, 1));
        double before = Decibels.FromPowerRatio(field.At(new(1.2, 2, 1))), behind = Decibels.FromPowerRatio(field.At(new(4.8, 2, 1)));
        Assert.True(before - behind > 1, $"{before} dB before it, {behind} dB behind it");
    }

    private static Gen<Point3> Place => Gen.Select(Gen.Double[2.8, 3.2], Gen.Double[1.8, 2.2], Gen.Double[0.4, 1.8]).Select((x, y, z) => new Point3(x, y, z));

    private static Fixture Rack(Material material) => new("rack", 0, new Point2(3, 2), 0.6, 0.6, 0, 0.2, 2.0, material) { IsShell = true };

    private static House InRoom(params Fixture[] fixtures)
    {
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 6], [0, 4]);
        return SimpleHouse.Of(new Level("level", 0, 2.5)
        {
            Rooms = RoomGrid.Rooms([0, 6], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.5, SimpleHouse.Material("wall", 6)))],
        }) with
        {
            Fixtures = fixtures,
        };
    }

    // All that the panels of a shell do not turn to heat: out of it goes what the power balance does not absorb within.
    private static double Leaving(int[] panels, Point3 inside)
    {
        var rack = Rack(Ladder[0]!) with
        {
            OpenSides = Sides.Where((_, i) => Ladder[panels[i]] is null).Aggregate(BoxSides.None, (all, side) => all | side),
            SideMaterials = Sides.Zip(panels).Where(pair => Ladder[pair.Second] is not null).ToDictionary(pair => pair.First, pair => Ladder[pair.Second]!),
        };
        var diffuse = new DiffuseHouse(InRoom(rack));
        int cell = diffuse.Cells.At(inside);
        SurfaceExchange exchange = diffuse.Shell.Exchange;
        IReadOnlyList<double> strikes = diffuse.Of(inside).AllStrikes(diffuse.Shell);
        double heat = 0;
        for (int facet = 0; facet < diffuse.Shell.Surfaces.Of(cell).Count; facet++)
        {
            SheetPower power = diffuse.Shell.PowerOf(diffuse.Shell.Surfaces.Of(cell)[facet].Sheets);
            heat += strikes[exchange.Node(cell, facet)] * (1 - power.Passed - power.ReflectedNear);
        }

        return 1 - heat;
    }
}
