using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Scenes;

/// <summary>A line from inside a shell past the corner of its lid and two sides leaves by one of the three, and they look alike from there.</summary>
public sealed class ShellCornerTests
{
    // A step of two millimetres, and the most that it may change the power: 1.5 dB in a centimetre would be 0.3 dB; one line in ten thousand is steeper,
    // close under a lid. A face that one of the lines sees and the other does not is worth 3 to 5 dB here.
    private const double StepMetres = 0.002, MostDb = 0.75;

    // Nearer to the lid the front at the corner is only some centimetres wide.
    private const double UnderLidMetres = 0.1;

    private static readonly Material Panel = SimpleHouse.Material("panel", 20);

    private static readonly Gen<(Fixture Box, Point3 Inside, Point3 Hands, Point3 Next)> Lines =
        from sizeX in Gen.Double[0.5, 1.2]
        from sizeY in Gen.Double[0.5, 1.2]
        from high in Gen.Double[0.6, 1.2]
        from open in Gen.OneOf(BoxSides.Top, BoxSides.East, BoxSides.North, BoxSides.None)
        let corner = new Point3(3 + (sizeX / 2), 2 + (sizeY / 2), high)
        from degrees in Gen.OneOf(Gen.Double[8, 36], Gen.Double[54, 82]) // clear of 45°, where both sides stand as much across as along
        from steep in Gen.Double[10, 50]
        from away in Gen.Double[0.2, 0.45]
        from farther in Gen.Double[0.8, 2]
        from east in Gen.Double[-0.02, 0.02]
        from up in Gen.Double[-0.02, 0.02]
        from turn in Gen.Double[0, 2 * Math.PI]
        let plan = new Point2(Math.Cos(double.DegreesToRadians(degrees)), Math.Sin(double.DegreesToRadians(degrees)))
        let direction = plan.At(Math.Tan(double.DegreesToRadians(steep)))
        let inside = corner - (away * direction)
        let hands = corner + (farther * direction) + new Point3(-east * plan.Y, east * plan.X, up)
        let box = new Fixture("box", 0, new Point2(3, 2), sizeX, sizeY, 0, 0, high, Panel) { IsShell = true, OpenSides = open }
        where inside.Z > 0.1 && corner.Z - inside.Z > UnderLidMetres && box.Contains(inside.Plan, inside.Z, 0)
        select (box, inside, hands, hands + new Point3(-StepMetres * Math.Cos(turn) * plan.Y, StepMetres * Math.Cos(turn) * plan.X, StepMetres * Math.Sin(turn)));

    [Fact, Law]
    public void A_small_step_across_a_line_past_a_corner_hardly_changes_what_passes() => Lines.ForAll(
        line =>
        {
            Scene scene = Scene.Compile(SimpleHouse.OfFixture(line.Box));
            var losses = new LossTables(scene.Materials, scene.Band);
            Assert.InRange(10 * Math.Log10(Power(line.Next) / Power(line.Hands)), -MostDb, MostDb);
            Assert.InRange(10 * Math.Log10(PowerBack(line.Next) / PowerBack(line.Hands)), -MostDb, MostDb);

            double Power(Point3 hands) => Passed(line.Inside, hands);
            double PowerBack(Point3 hands) => Passed(hands, line.Inside);
            double Passed(Point3 from, Point3 to)
            {
                var buffer = new TraceBuffer();
                scene.Gather(new Ray(from, to, scene.Band.Equivalent.WavelengthMetres), buffer);
                return FrontSum.PowerRatio(buffer.Pieces, losses);
            }
        },
        cases: 2000);
}
