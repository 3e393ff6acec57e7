using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>What a shell hides of the surfaces round it, against lines to many points of a patch.</summary>
public sealed class ShellShadowTests
{
    private const int Across = 15;

    [Fact, Law]
    public void A_patch_is_hidden_as_far_as_lines_to_it_run_through_the_shell() =>
        Gen.Select(Gen.Double[0.3, 1], Gen.Double[0.3, 1.5], Gen.Double[0, 90], AnyPlace, AnyPlace, Gen.Double[0.2, 0.75]).ForAll((wide, high, degrees, place, middle, half) =>
        {
            FixtureBox box = Shell(wide, high, degrees);
            if (Clearance(box, place) < 0.3 || Clearance(box, middle) < half * Math.Sqrt(2) || place.DistanceTo(middle) < half)
            {
                return; // a place right at the shell or the patch, or a patch that may reach into the shell
            }

            Span<Point3> planes = stackalloc Point3[ShellShadow.MostPlanes];
            double hidden = new ShellShadow(box, place, planes).Hidden(middle, half);

            // A square patch that faces the place. It may lie aslant to the shadow, and the shadow may be narrower than the patch.
            Assert.InRange(Math.Abs(hidden - ByLines(box, place, middle, half)), 0, 0.5);
        }, 2000);

    [Fact]
    public void On_the_mean_it_is_hidden_as_far_as_lines_say()
    {
        FixtureBox box = Shell(0.6, 1.8, 0);
        var place = new Point3(-2, 0.4, 1);
        double byPlanes = 0, byLines = 0;
        Span<Point3> planes = stackalloc Point3[ShellShadow.MostPlanes];
        for (double y = -3; y <= 3; y += 0.1)
        {
            var middle = new Point3(2, y, 1);
            byPlanes += new ShellShadow(box, place, planes).Hidden(middle, 0.5);
            byLines += ByLines(box, place, middle, 0.5);
        }

        Assert.Equal(byLines, byPlanes, 0.05 * byLines);
    }

    [Fact, Law]
    public void A_step_of_a_millimetre_changes_little_of_what_is_hidden() =>
        Gen.Select(Gen.Double[0.3, 1], Gen.Double[0.3, 1.5], Gen.Double[0, 90], AnyPlace, AnyPlace, Gen.Double[0, 2 * Math.PI]).ForAll((wide, high, degrees, place, middle, direction) =>
        {
            FixtureBox box = Shell(wide, high, degrees);
            Point3 next = place + new Point3(0.001 * Math.Cos(direction), 0.001 * Math.Sin(direction), 0);
            if (Clearance(box, place) < 0.1 || Clearance(box, middle) < 0.1)
            {
                return;
            }

            Span<Point3> planes = stackalloc Point3[ShellShadow.MostPlanes];
            double before = new ShellShadow(box, place, planes).Hidden(middle, 0.5), after = new ShellShadow(box, next, planes).Hidden(middle, 0.5);
            Assert.Equal(before, after, 0.06);
        }, 5000);

    [Theory]
    [InlineData(3.3)]
    [InlineData(4.67)] // against a wall
    public void Nobody_who_steps_out_of_an_open_side_meets_a_seam(double rackAt)
    {
        Material wall = SimpleHouse.Material("stud", 4), steel = SimpleHouse.Material("steel", 40);
        RoomGrid.Side[] sides = RoomGrid.Sides([0, 5], [0, 4]);
        House house = SimpleHouse.Of(new Level("level", 0, 2.5)
        {
            Rooms = RoomGrid.Rooms([0, 5], [0, 4]),
            Walls = [.. sides.Select((side, i) => new Wall($"wall {i}", side.Start, side.End, 0, 2.5, wall))],
        }) with
        {
            Fixtures = [new Fixture("rack", 0, new Point2(rackAt, 2), 0.6, 0.6, 0, 0.2, 2.0, steel) { IsShell = true, OpenSides = BoxSides.West }],
        };
        DiffuseField field = new DiffuseHouse(house).Of(new Point3(1, 1, 1));
        foreach (double y in new[] { 1.8, 2.0, 2.2 })
        {
            double inside = field.At(new Point3(rackAt - 0.3 + 1e-5, y, 1.1)), outside = field.At(new Point3(rackAt - 0.3 - 1e-5, y, 1.1));
            Assert.Equal(Decibels.FromPowerRatio(inside), Decibels.FromPowerRatio(outside), 0.01);
        }
    }

    private static Gen<Point3> AnyPlace { get; } = Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[0, 2.5], (x, y, z) => new Point3(x, y, z));

    private static FixtureBox Shell(double wide, double high, double degrees)
    {
        Material steel = SimpleHouse.Material("steel", 40);
        House house = SimpleHouse.Of(new Level("level", 0, 2.5)) with
        {
            Fixtures = [new Fixture("shell", 0, new Point2(0, 0), wide, 0.6, degrees, 0.2, 0.2 + high, steel) { IsShell = true }],
        };
        return Scene.Compile(house).Boxes[0];
    }

    // How far outside the shell a place is at least.
    private static double Clearance(FixtureBox box, Point3 at) =>
        Math.Max(-box.DepthOf(at.Plan), Math.Max(box.VerticalExtent.Low - at.Z, at.Z - box.VerticalExtent.High));

    private static double ByLines(FixtureBox box, Point3 place, Point3 middle, double half)
    {
        Point3 towards = (middle - place).Unit;
        Point3 aside = towards.Cross(Math.Abs(towards.Z) < 0.9 ? new(0, 0, 1) : new(1, 0, 0)).Unit, up = aside.Cross(towards);
        int hidden = 0;
        for (int i = 0; i < Across; i++)
        {
            for (int j = 0; j < Across; j++)
            {
                Point3 at = middle + (half * (((2 * i) + 1.0 - Across) / Across) * aside) + (half * (((2 * j) + 1.0 - Across) / Across) * up);
                hidden += box.Pierce(place, at, out _) ? 1 : 0;
            }
        }

        return hidden / (double)(Across * Across);
    }
}
