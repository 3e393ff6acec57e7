using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Paths.Diffuse;

/// <summary>Solid angles and areas of what a cell sees.</summary>
public sealed class FacetTests
{
    private const double Same = 1e-9;

    // Slivers under a millimetre wide are left out.
    private const double LeftOutSquareMetres = 0.02;

    private static readonly Gen<double> Size = Gen.Double[0.05, 5];

    private static readonly Gen<Point3> Place =
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3], (x, y, z) => new Point3(x, y, z));

    [Fact, Law]
    public void A_rectangle_seen_from_its_axis_has_the_angle_of_the_closed_form() =>
        Gen.Select(Size, Size, Size).ForAll((a, b, d) =>
        {
            // Of half sides a and b from a distance d: 4·arcsin(ab/√((a² + d²)(b² + d²))).
            double closed = 4 * Math.Asin(a * b / Math.Sqrt(((a * a) + (d * d)) * ((b * b) + (d * d))));
            Assert.Equal(closed, Rectangle(a, b).SolidAngle(new Point3(0, 0, d)), Same);
            Assert.Equal(closed, Rectangle(a, b).SolidAngle(new Point3(0, 0, -d)), Same);
        });

    [Fact, Law]
    public void A_closed_box_fills_the_sphere_from_inside() =>
        Gen.Select(Gen.Double[0.01, 0.99], Gen.Double[0.01, 0.99], Gen.Double[0.01, 0.99], Size, Size, Size).ForAll(
            (x, y, z, sizeX, sizeY, sizeZ) =>
            {
                var place = new Point3(x * sizeX, y * sizeY, z * sizeZ);
                Assert.Equal(4 * Math.PI, Box(sizeX, sizeY, sizeZ).Sum(facet => facet.SolidAngle(place)), Same);
            });

    [Fact, Law]
    public void Any_triangle_has_the_angle_that_its_small_parts_add_up_to() =>
        Gen.Select(Place, Place, Place).ForAll(
            (a, b, c) =>
            {
                // Ω = ∫ cos θ / r² dA from a place clear of the triangle's plane; the midpoint rule over n² parts.
                const int Parts = 60;
                var facet = new Facet(-1, [], [a, b, c]);
                var from = new Point3(0.3, 0.2, 7);
                double sum = 0;
                for (int i = 0; i < Parts; i++)
                {
                    for (int j = 0; j < Parts - i; j++)
                    {
                        sum += Part(from, a, b, c, (i + (1.0 / 3)) / Parts, (j + (1.0 / 3)) / Parts);
                        sum += j + i + 1 < Parts ? Part(from, a, b, c, (i + (2.0 / 3)) / Parts, (j + (2.0 / 3)) / Parts) : 0;
                    }
                }

                double byParts = Math.Abs(sum) * 2 * facet.SquareMetres / (Parts * Parts) / 2;
                Assert.Equal(byParts, facet.SolidAngle(from), 1e-3 * (1e-3 + byParts));
            },
            cases: 50);

    [Fact, Law]
    public void A_place_in_the_plane_of_a_hole_sees_half_the_sphere_through_it() =>
        Gen.Select(Size, Size, Gen.Double[-0.9, 0.9], Gen.Double[-0.9, 0.9], Gen.OneOf(0, 1e-12, -1e-8)).ForAll(
            (a, b, x, y, z) =>
            {
                Assert.Equal(2 * Math.PI, Rectangle(a, b).SolidAngle(new Point3(x * a, y * b, z)), 1e-4);
                Assert.Equal(2 * Math.PI, Rectangle(a, b).SolidAngle(new Point3(0, 0, z)), 1e-4);
                Assert.Equal(0, Rectangle(a, b).SolidAngle(new Point3(1.5 * a, y * b, z)), 1e-4);
            });

    [Fact, Law]
    public void The_facets_of_a_room_are_its_whole_surface() =>
        RoomedHouse.Any.ForAll(
            house =>
            {
                var diffuse = new DiffuseHouse(house);
                for (int level = 0; level < house.Levels.Count; level++)
                {
                    Level here = house.Levels[level];
                    foreach ((Room room, int i) in here.Rooms.Select((room, i) => (room, i)))
                    {
                        Point2 size = room.Outline.Greatest - room.Outline.Least;
                        double all = (2 * (size.X + size.Y) * here.HeightMetres) + (2 * size.X * size.Y);
                        int cell = diffuse.Cells.OfRoom(level, i);
                        FixtureBox[] shells = [.. diffuse.Cells.Shells.Where(shell => diffuse.Cells.RoomAt(shell.Level, shell.Centre) == cell)];
                        double things = shells.Sum(shell => shell.SurfaceSquareMetres);

                        // What stands flush before a wall, or before another thing, closes off both: the room sees neither.
                        double closed = shells.Sum(shell => diffuse.Shell.Surfaces.Of(diffuse.Cells.OfShell(shell))
                            .Where(facet => facet.Other != cell)
                            .Sum(facet => facet.SquareMetres * (shells.Any(other => diffuse.Cells.OfShell(other) == facet.Other) ? 1 : 2)));
                        Assert.Equal(all + things - closed, diffuse.Shell.Surfaces.Of(cell).Sum(facet => facet.SquareMetres), LeftOutSquareMetres);
                    }
                }
            },
            cases: 40);

    private static double Part(Point3 from, Point3 a, Point3 b, Point3 c, double u, double v)
    {
        double x = a.X + (u * (b.X - a.X)) + (v * (c.X - a.X)) - from.X;
        double y = a.Y + (u * (b.Y - a.Y)) + (v * (c.Y - a.Y)) - from.Y;
        double z = a.Z + (u * (b.Z - a.Z)) + (v * (c.Z - a.Z)) - from.Z;
        double nx = ((b.Y - a.Y) * (c.Z - a.Z)) - ((b.Z - a.Z) * (c.Y - a.Y));
        double ny = ((b.Z - a.Z) * (c.X - a.X)) - ((b.X - a.X) * (c.Z - a.Z));
        double nz = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        double r = Math.Sqrt((x * x) + (y * y) + (z * z)), n = Math.Sqrt((nx * nx) + (ny * ny) + (nz * nz));
        return n == 0 ? 0 : ((x * nx) + (y * ny) + (z * nz)) / (n * r * r * r);
    }

    private static Facet Rectangle(double a, double b) =>
        new(-1, [], [new(-a, -b, 0), new(a, -b, 0), new(a, b, 0), new(-a, b, 0)]);

    private static Facet[] Box(double x, double y, double z)
    {
        Point3[] low = [new(0, 0, 0), new(x, 0, 0), new(x, y, 0), new(0, y, 0)];
        Point3[] high = [.. low.Select(p => p.Plan.At(z))];
        return
        [
            new(-1, [new Sheet(0)], low),
            new(-1, [new Sheet(0)], high),
            .. Enumerable.Range(0, 4).Select(i =>
                new Facet(-1, [new Sheet(0)], [low[i], low[(i + 1) % 4], high[(i + 1) % 4], high[i]])),
        ];
    }
}
