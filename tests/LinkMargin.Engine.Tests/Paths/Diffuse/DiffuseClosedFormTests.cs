using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>The diffuse field in bare boxes, against sums over reflections written out by hand.</summary>
public sealed class DiffuseClosedFormTests
{
    // What a flight from one part of a face to another adds to the mean over the box is not quite the same for all parts.
    private const double MeanDb = 0.3;

    private static readonly Gen<double> Inside = Gen.Double[0.05, 0.95];

    [Fact, Law]
    public void In_a_box_of_one_material_all_reflections_from_the_second_on_add_up() =>
        Gen.Select(Gen.Double[0.2, 60], Inside.Array[3]).ForAll((lossDb, from) =>
        {
            // Of one watt Rⁿ is left after n reflections, and each flight of a share W fills the room with 4·W/A:
            // 4/A·(R² + R³ + …) = 4·R²/(A·(1 − R)).
            (DiffuseField field, double area, AngleTable table) = Box(lossDb, true, from);
            double reflected = table.DiffuseReflectance;
            Assert.Equal(0, Decibels.FromPowerRatio(Mean(field) / (4 * reflected * reflected / (area * (1 - reflected)))), MeanDb);
        });

    [Fact, Law]
    public void Where_nothing_is_a_mirror_the_first_reflection_is_diffuse_too() =>
        Gen.Select(Gen.Double[0.2, 60], Inside.Array[3], Inside.Array[3]).ForAll((lossDb, from, to) =>
        {
            // The first by Lambert's law from where it strikes: Σ 4·R·share·share'/area of each face. The rest is what mirrors leave.
            (DiffuseField field, _, AngleTable table) = Box(lossDb, false, from);
            double reflected = table.DiffuseReflectance;
            double first = Faces().Select(face => new Facet(Cells.Outdoors, [new Sheet(0)], face)).Sum(face =>
                4 * reflected * Share(face, from) * Share(face, to) / face.SquareMetres);
            double rest = Box(lossDb, true, from).Field.At(Place(to));
            Assert.Equal(1, field.At(Place(to)) / (first + rest), 1e-9);
        });

    private static double Mean(DiffuseField field) => (
        from x in Grid
        from y in Grid
        from z in Grid
        select field.At(Place([x, y, z]))).Average();

    private static IEnumerable<double> Grid => Enumerable.Range(0, 8).Select(i => (i + 0.5) / 8);

    private static double Share(Facet face, double[] place) => face.SolidAngle(Place(place)) / (4 * Math.PI);

    private static Point3 Place(double[] shares) => new(5 * shares[0], 3 * shares[1], 2.4 * shares[2]);

    private static IEnumerable<Point3[]> Faces()
    {
        Point3[] low = [new(0, 0, 0), new(5, 0, 0), new(5, 3, 0), new(0, 3, 0)];
        Point3[] high = [.. low.Select(p => p.Plan.At(2.4))];
        yield return low;
        yield return high;
        for (int i = 0; i < 4; i++)
        {
            yield return [low[i], low[(i + 1) % 4], high[(i + 1) % 4], high[i]];
        }
    }

    private static Point3 Outwards(Point3[] face)
    {
        Point3 a = face[0], b = face[1], c = face[2];
        Point3 normal = new(
            ((b.Y - a.Y) * (c.Z - a.Z)) - ((b.Z - a.Z) * (c.Y - a.Y)),
            ((b.Z - a.Z) * (c.X - a.X)) - ((b.X - a.X) * (c.Z - a.Z)),
            ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X)));
        double length = Math.Sqrt((normal.X * normal.X) + (normal.Y * normal.Y) + (normal.Z * normal.Z));
        double side = (normal.X * (a.X - 2.5)) + (normal.Y * (a.Y - 1.5)) + (normal.Z * (a.Z - 1.2)) > 0 ? 1 : -1;
        return new(side * normal.X / length, side * normal.Y / length, side * normal.Z / length);
    }

    private static (DiffuseField Field, double Area, AngleTable Table) Box(double lossDb, bool isMirror, double[] from)
    {
        var house = Tests.Houses.SimpleHouse.Of(new Level("level", 0, 2.4)
        {
            Rooms = [new Room("room", new Polygon([new(0, 0), new(5, 0), new(5, 3), new(0, 3)]))],
        });
        var cells = new Cells(Engine.Scenes.Scene.Compile(house));
        var losses = new LossTables([new Material("made up", lossDb, 0, "made up")], Band.Bluetooth);
        var surfaces = new CellSurfaces(1);
        foreach (Point3[] face in Faces())
        {
            surfaces.AddPanel(0, Cells.Outdoors, face, [new Sheet(0, null, isMirror)], Outwards(face));
        }

        double area = Faces().Sum(face => new Facet(Cells.Outdoors, [new Sheet(0)], face).SquareMetres);
        return (new DiffuseField(cells, new RoomShell(surfaces, losses), Place(from)), area, losses[0]);
    }
}
