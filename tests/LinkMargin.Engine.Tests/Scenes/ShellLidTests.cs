using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>What comes over a shell and down behind its open side has passed its lid.</summary>
public sealed class ShellLidTests
{
    // A millimetre from the plane of the open side: the worst of 20,000 cases is 0.6 dB. Without the lid half of all cases are above 6 dB.
    private const double OffMetres = 0.001, MostDb = 1;

    // The two shade by different formulas: a solid thing by its silhouette, the shell by its sides and its lid. The worst of 20,000 cases is 0.4 dB;
    // without the lid half of all are above 2 dB.
    private const double SameDb = 0.7;

    private static readonly Material Panel = SimpleHouse.Material("panel", 20), Opaque = SimpleHouse.Material("opaque", 90);

    // A shell that is open to the north, a place in the plane of that side, at least 10 cm from its edges, and one far south of it; the line between them
    // runs below the lid.
    private static readonly Gen<(Fixture Box, Point3 Far, Point3 InPlane)> Lines =
        from sizeX in Gen.Double[0.5, 1.2]
        from sizeY in Gen.Double[0.4, 1]
        from foot in Gen.Double[0.1, 0.4]
        from high in Gen.Double[0.5, 0.9]
        from acrossShare in Gen.Double[0, 1]
        from underLid in Gen.Double[0.1, 0.35]
        from metres in Gen.Double[2, 4]
        from degrees in Gen.Double[-50, 50]
        from atSouthSide in Gen.Double[0.05, 0.4]
        let radians = double.DegreesToRadians(degrees)
        let inPlane = new Point3(3 - (sizeX / 2) + 0.1 + (acrossShare * (sizeX - 0.2)), 6 + (sizeY / 2), foot + high - underLid)
        let farther = metres * Math.Cos(radians)
        let far = new Point3(
            inPlane.X + (metres * Math.Sin(radians)), inPlane.Y - sizeY - farther, inPlane.Z + ((underLid - atSouthSide) * (1 + (farther / sizeY))))
        where far.Z is > 0.1 and < 2.3
        select (
            new Fixture("box", 0, new Point2(3, 6), sizeX, sizeY, 0, foot, foot + high, Panel) { IsShell = true, OpenSides = BoxSides.North }, far, inPlane);

    [Fact, Law]
    public void A_place_that_passes_the_open_side_of_a_shell_sees_the_lid_from_both_sides_of_it() => Lines.ForAll(
        (box, far, inPlane) => IsSeenFromBothSides(box, far, inPlane, MostDb),
        cases: 500);

    [Fact, Law]
    public void Behind_its_open_side_an_opaque_shell_shades_like_a_solid_thing_of_its_size() => Lines.ForAll(
        (box, far, inPlane) =>
        {
            Point3 hands = inPlane with { Y = inPlane.Y + 0.3 };
            double solid = LossDb(box with { IsShell = false, OpenSides = BoxSides.None, Material = Opaque }, far, hands);
            Assert.Equal(solid, LossDb(box with { Material = Opaque }, far, hands), SameDb);
        },
        cases: 500);

    [Theory]
    [InlineData(3.45, 80)] // below the underside
    [InlineData(3.55, 10)] // just beside it: some bends round its edge
    public void What_a_ceiling_reflects_down_through_a_shell_passes_its_underside(double x, double leastDb)
    {
        var box = new Fixture("box", 0, new Point2(3, 2), 1, 1.3, 0, 1.2, 1.7, Opaque) { IsShell = true, OpenSides = BoxSides.Top };
        LinkBudget link = OneLink.Of(SimpleHouse.OfFixture(box), new Point3(3, 2, 1.45), new Point3(x, 2, 0.4));
        Assert.DoesNotContain(
            link.Paths, path => path.Turns.Any(turn => turn.Kind == TurnKind.Ceiling) && OneLink.ExcessDb(path) - path.ReflectionDb < leastDb);
    }

    /// <summary>A place in the plane of an open side sees as much from inside as from outside, and so it is backwards.</summary>
    internal static void IsSeenFromBothSides(Fixture box, Point3 far, Point3 inPlane, double mostDb)
    {
        Point3 inside = inPlane with { Y = inPlane.Y - OffMetres }, outside = inPlane with { Y = inPlane.Y + OffMetres };
        double here = LossDb(box, far, inside), there = LossDb(box, far, outside);
        Assert.Equal(here, there, mostDb);
        Assert.Equal(here, LossDb(box, inside, far), 1e-9);
        Assert.Equal(there, LossDb(box, outside, far), 1e-9);
    }

    private static double LossDb(Fixture box, Point3 from, Point3 to) => OneFront.LossDb(SimpleHouse.OfFixture(box), from, to);
}
