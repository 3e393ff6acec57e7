using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>One layer of what stands between two cells.</summary>
/// <param name="Material">What it is made of, by number.</param>
/// <param name="Depths">Its thickness as a multiple of the depth that its material's loss belongs to; null for a sheet.</param>
/// <param name="IsMirror">Whether its first reflection is a path of its own; other layers scatter it.</param>
internal readonly record struct Sheet(int Material, double? Depths = null, bool IsMirror = true);

/// <summary>
/// A flat piece of a cell's surface as seen from inside, and the solid angle under which a place sees it.
/// </summary>
/// <param name="Other">The cell behind it.</param>
/// <param name="Sheets">What stands in it, the nearest first; nothing in a hole.</param>
/// <param name="Outline">Its corners in order.</param>
internal sealed record Facet(int Other, Sheet[] Sheets, Point3[] Outline)
{
    /// <summary>A place closer than this to a facet's plane counts as in the plane, metres.</summary>
    internal const double Hair = 1e-7;

    /// <summary>Whether nothing stands in it.</summary>
    internal bool IsHole => Sheets.Length == 0;

    /// <summary>Whether its first reflection is a path of its own; other facets scatter it.</summary>
    internal bool IsMirror => IsHole || Sheets[0].IsMirror;

    /// <summary>The direction it faces, into the cell that sees it, of unit length; null where it is not needed.</summary>
    internal Point3? Normal { get; init; }

    /// <summary>Whether its outline is a mean of several, so that it counts even for a place behind it.</summary>
    internal bool IsMean { get; init; }

    /// <summary>For a hole, the number of the cell behind it among those its own cell has holes to; −1 for others.</summary>
    internal int Hole { get; init; } = -1;

    /// <summary>Area, square metres.</summary>
    internal double SquareMetres => DoubleArea().Length / 2;

    /// <summary>
    /// Solid angle, steradians, by a fan of triangles, each by the formula of A. van Oosterom and J. Strackee, IEEE Trans.
    /// Biomedical Engineering 30(2), 1983: tan(Ω/2) = a·(b×c) / (abc + (a·b)c + (b·c)a + (c·a)b). In the facet's own plane, where
    /// the formula cannot tell inside from outside, the place is moved off it by a hair: half the sphere for a place inside.
    /// </summary>
    internal double SolidAngle(Point3 from)
    {
        Point3 normalTwice = DoubleArea();
        double twice = normalTwice.Length;
        Point3 to = Outline[0] - from;
        if (!IsMean && Normal is { } normal && normal.Dot(to) > Hair)
        {
            return 0; // seen from behind
        }

        if (Math.Abs(normalTwice.Dot(to)) < Hair * twice)
        {
            from += Hair / twice * normalTwice;
        }

        double sum = 0;
        Point3 a = Outline[0] - from, b = Outline[1] - from;
        double la = a.Length, lb = b.Length;
        for (int i = 2; i < Outline.Length; i++)
        {
            Point3 c = Outline[i] - from;
            double lc = c.Length;
            double volume = a.Dot(b.Cross(c));
            double below = (la * lb * lc) + (a.Dot(b) * lc) + (b.Dot(c) * la) + (c.Dot(a) * lb);
            sum += 2 * Math.Atan2(volume, below);
            b = c;
            lb = lc;
        }

        return Math.Abs(sum);
    }

    /// <summary>A vector along the normal, twice the area long.</summary>
    internal Point3 DoubleArea()
    {
        Point3 sum = default;
        for (int i = 1; i + 1 < Outline.Length; i++)
        {
            sum += (Outline[i] - Outline[0]).Cross(Outline[i + 1] - Outline[0]);
        }

        return sum;
    }
}
