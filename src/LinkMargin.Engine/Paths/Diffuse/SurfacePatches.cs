using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// The facets of a cell grouped into patches: those of one block that face one way, a shell's sides separately from the room's. A patch is
/// uniformly bright, from all that its facets reflect and pass; its position and extent follow from the areas of its facets, so a wall in two
/// parts counts as one wall.
/// </summary>
internal sealed class SurfacePatches
{
    private readonly int[] ofFacet;
    private readonly Point3[] middles;
    private readonly double[] halfMetres;

    private SurfacePatches(int[] ofFacet, Facet[] patches)
    {
        this.ofFacet = ofFacet;
        Patches = patches;
        middles = [.. patches.Select(Middle)];
        halfMetres = [.. patches.Select(patch => Math.Sqrt(patch.SquareMetres) / 2)];
    }

    /// <summary>The rectangle that stands for each patch.</summary>
    internal IReadOnlyList<Facet> Patches { get; }

    /// <summary>The patch that a facet is part of.</summary>
    internal int Of(int facet) => ofFacet[facet];

    /// <summary>The middle of the patch that a facet is part of.</summary>
    internal Point3 MiddleOf(int facet) => middles[ofFacet[facet]];

    /// <summary>Half the side of a square with the area of that patch, metres.</summary>
    internal double HalfMetresOf(int facet) => halfMetres[ofFacet[facet]];

    /// <summary>Puts facets into patches.</summary>
    /// <param name="facets">The facets.</param>
    /// <param name="grid">The blocks; null where each facet is a patch.</param>
    /// <param name="shellOf">The number of the shell of which a facet is a side; below 0 for none. Its sides are patches of their own.</param>
    internal static SurfacePatches Of(IReadOnlyList<Facet> facets, CellGrid? grid, Func<Facet, int> shellOf)
    {
        var ofFacet = new int[facets.Count];
        if (grid is null)
        {
            return new SurfacePatches([.. Enumerable.Range(0, facets.Count)], [.. facets]);
        }

        var numbers = new Dictionary<(int Place, int Shell), int>();
        var sums = new List<Moments>();
        for (int i = 0; i < ofFacet.Length; i++)
        {
            (int Place, int Shell) key = (grid.PatchOf(Middle(facets[i]), facets[i].Normal!.Value), shellOf(facets[i]));
            if (!numbers.TryGetValue(key, out int patch))
            {
                numbers.Add(key, patch = sums.Count);
                sums.Add(new Moments());
            }

            ofFacet[i] = patch;
            sums[patch].Add(facets[i]);
        }

        return new SurfacePatches(ofFacet, [.. sums.Select(sum => sum.Rectangle(grid.East))]);
    }

    private static Point3 Middle(Facet facet) => facet.Outline[0].Towards(facet.Outline[2], 0.5);

    // Area, middle and spread of a patch, added up over its facets.
    private sealed class Moments
    {
        private double area;
        private double x, y, z;
        private double xx, yy, zz, xy, yz, zx;
        private double normalX, normalY, normalZ;

        internal void Add(Facet facet)
        {
            double square = facet.SquareMetres;
            Point3 middle = Middle(facet), normal = facet.Normal!.Value;
            Point3 a = facet.Outline[1] - facet.Outline[0], b = facet.Outline[^1] - facet.Outline[0];
            area += square;
            (x, y, z) = (x + (square * middle.X), y + (square * middle.Y), z + (square * middle.Z));
            (normalX, normalY, normalZ) = (normalX + (square * normal.X), normalY + (square * normal.Y), normalZ + (square * normal.Z));
            xx += square * Second(middle.X, middle.X, a.X, a.X, b.X, b.X);
            yy += square * Second(middle.Y, middle.Y, a.Y, a.Y, b.Y, b.Y);
            zz += square * Second(middle.Z, middle.Z, a.Z, a.Z, b.Z, b.Z);
            xy += square * Second(middle.X, middle.Y, a.X, a.Y, b.X, b.Y);
            yz += square * Second(middle.Y, middle.Z, a.Y, a.Z, b.Y, b.Z);
            zx += square * Second(middle.Z, middle.X, a.Z, a.X, b.Z, b.X);
        }

        // A rectangle as wide and high as the facets spread, of their area.
        internal Facet Rectangle(Point3 east)
        {
            Point3 middle = new(x / area, y / area, z / area), normal = new Point3(normalX, normalY, normalZ).Unit;
            bool isLevel = Math.Abs(normal.Z) > 0.5;
            Point3 along = isLevel ? east : new Point3(-normal.Y, normal.X, 0).Unit;
            Point3 up = isLevel ? new(-along.Y, along.X, 0) : new(0, 0, 1);
            double width = Math.Max(Along(along, middle), LeastSpread), height = Math.Max(Along(up, middle), LeastSpread);
            double scale = Math.Sqrt(area / (width * height)) / 2;
            Point3 across = scale * width * along, upwards = scale * height * up;
            Point3[] outline =
            [
                middle - across - upwards,
                middle + across - upwards,
                middle + across + upwards,
                middle - across + upwards,
            ];
            return new Facet(Cells.Outdoors, [], outline) { Normal = normal };
        }

        private const double LeastSpread = 1e-6;

        private double Along(Point3 d, Point3 middle)
        {
            double square = (d.X * d.X * Spread(xx, middle.X, middle.X)) + (d.Y * d.Y * Spread(yy, middle.Y, middle.Y)) + (d.Z * d.Z * Spread(zz, middle.Z, middle.Z))
                + (2 * d.X * d.Y * Spread(xy, middle.X, middle.Y)) + (2 * d.Y * d.Z * Spread(yz, middle.Y, middle.Z)) + (2 * d.Z * d.X * Spread(zx, middle.Z, middle.X));
            return Math.Sqrt(Math.Max(0, square));
        }

        private double Spread(double second, double a, double b) => (second / area) - (a * b);

        // Mean of a product over a parallelogram.
        private static double Second(double m, double n, double a, double b, double c, double d) => (m * n) + (((a * b) + (c * d)) / 12);
    }
}
