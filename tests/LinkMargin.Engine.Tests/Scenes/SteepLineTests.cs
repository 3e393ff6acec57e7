using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>Lines that run steeply past or through fixtures, mostly with an end above or below them.</summary>
public sealed class SteepLineTests
{
    // The plate is 2 cm thick, and the judge's edge is in its middle: the worst of 20,000 cases is 0.4 dB. With heights measured where edges are on the
    // plan, one case in ten was above 20 dB.
    private const double SameDb = 0.5;

    // A millimetre from the plane of the open side: the worst of 20,000 cases is 1.1 dB. With heights measured where edges are on the plan, half were
    // above 74 dB.
    private const double MostDb = 1.5;

    // Nearer than this to the far edge of the lid the face beyond the near edge fades out for an end inside, v.
    private const double ClearOfEdge = 1.3;

    private static readonly Material Opaque = SimpleHouse.Material("opaque", 90);

    // A plate of 4 by 4 m, 1.2 m above the floor, with an edge at x = 3, and a line across that edge, from 20 degrees to straight up. Its other edges are
    // out of reach.
    private static readonly Fixture Plate = new("plate", 0, new Point2(5, 5), 4, 4, 0, 1.19, 1.21, Opaque);

    private static readonly Gen<(Point3 Low, Point3 High)> PastTheEdge =
        from degrees in Gen.OneOf(Gen.Double[20, 90], Gen.Double[80, 90], Gen.Const(90.0))
        from inside in Gen.Double[-0.25, 0.4]
        from below in Gen.Double[0.5, 1.1]
        from above in Gen.Double[0.5, 1.1]
        from isTowards in Gen.Bool
        let run = (isTowards ? 1 : -1) / Math.Tan(double.DegreesToRadians(degrees))
        let low = new Point3(3 + inside - (run * below), 5, 1.2 - below)
        let high = new Point3(3 + inside + (run * above), 5, 1.2 + above)
        where Math.Max(low.X, high.X) > 3 // an end is above or below the plate
        select (low, high);

    // The same beside the edge, not across it: both ends are below or above the plate.
    private static readonly Gen<(Point3 Low, Point3 High)> AlongTheEdge =
        from degrees in Gen.OneOf(Gen.Double[60, 90], Gen.Double[80, 90], Gen.Const(90.0))
        from inside in Gen.Double[0.001, 0.4]
        from below in Gen.Double[0.5, 1.1]
        from above in Gen.Double[0.5, 1.1]
        let run = 1 / Math.Tan(double.DegreesToRadians(degrees))
        select (new Point3(3 + inside, 5 - (run * below), 1.2 - below), new Point3(3 + inside, 5 + (run * above), 1.2 + above));

    // A shell that is open to the north, a place in the plane of that side, at least 10 cm from its edges, and one south of it and higher; the line between
    // them passes the lid.
    private static readonly Gen<(Fixture Box, Point3 Far, Point3 InPlane)> ThroughTheLid =
        from sizeX in Gen.Double[0.8, 1.5]
        from sizeY in Gen.Double[0.6, 1.2]
        from underLid in Gen.Double[0.1, 0.35]
        from acrossShare in Gen.Double[0, 1]
        from depthShare in Gen.Double[0.1, 0.6]
        from degrees in Gen.Double[-15, 15]
        from rise in Gen.Double[1, 1.4]
        let box = new Fixture("box", 0, new Point2(3, 6), sizeX, sizeY, 0, 0.2, 0.9, Opaque) { IsShell = true, OpenSides = BoxSides.North }
        let inPlane = new Point3(3 - (sizeX / 2) + 0.3 + (acrossShare * (sizeX - 0.6)), 6 + (sizeY / 2), 0.9 - underLid)
        let run = depthShare * sizeY * rise / underLid
        let far = new Point3(inPlane.X + (run * Math.Sin(double.DegreesToRadians(degrees))), inPlane.Y - run, inPlane.Z + rise)
        where FarEdge(box, far, inPlane) > ClearOfEdge && Math.Abs(far.Y - 6 + (sizeY / 2)) > 0.05 // nor in the plane of the far side
        select (box, far, inPlane);

    [Fact, Law]
    public void A_steep_line_past_the_edge_of_a_solid_thing_meets_a_knife_edge() => PastTheEdge.ForAll(IsAKnifeEdge, cases: 300);

    [Fact, Law]
    public void A_steep_line_along_the_edge_of_a_solid_thing_meets_a_knife_edge() => AlongTheEdge.ForAll(IsAKnifeEdge, cases: 300);

    [Fact, Law]
    public void A_place_that_passes_the_open_side_of_a_shell_sees_the_lid_above_it_from_both_sides() => ThroughTheLid.ForAll(
        (box, far, inPlane) => ShellLidTests.IsSeenFromBothSides(box, far, inPlane, MostDb),
        cases: 300);

    // The edge is a level line; seen along the line from one end to the other it is as far beside that as their distance.
    private static void IsAKnifeEdge(Point3 low, Point3 high)
    {
        double whole = low.DistanceTo(high), share = (1.2 - low.Z) / (high.Z - low.Z), inside = low.X + (share * (high.X - low.X)) - 3;
        Point3 along = (1 / whole) * (high - low), edge = new(0, 1, 0), across = along.Cross(edge);
        double aside = Math.Abs(new Point3(-inside, 0, 0).Dot((1 / across.Length) * across));

        // Where the common perpendicular of both meets the line.
        double first = (share * whole) - (inside * along.X / (1 - (along.Y * along.Y)));
        double wavelength = Band.Bluetooth.Equivalent.WavelengthMetres;
        double v = Math.CopySign(aside, inside) * Math.Sqrt(2 * whole / (wavelength * first * (whole - first)));
        double expected = v <= KnifeEdge.LeastParameter ? 0 : KnifeEdge.LossDb(v);
        Assert.Equal(expected, LossDb(Plate, low, high), SameDb);
        Assert.Equal(expected, LossDb(Plate, high, low), SameDb);
    }

    // How far the south edge of the lid is from the line, v.
    private static double FarEdge(Fixture box, Point3 far, Point3 inPlane)
    {
        double south = box.Centre.Y - (box.SizeY / 2), share = (inPlane.Y - south) / (inPlane.Y - far.Y);
        var edge = new Point3(inPlane.X + (share * (far.X - inPlane.X)), south, box.ToMetres);
        return KnifeEdge.ParameterOfDetour(KnifeEdge.DetourMetres(far, edge, inPlane), true, Band.Bluetooth.Equivalent.WavelengthMetres);
    }

    private static double LossDb(Fixture box, Point3 from, Point3 to) => OneFront.LossDb(SimpleHouse.OfFixture(box), from, to);
}
