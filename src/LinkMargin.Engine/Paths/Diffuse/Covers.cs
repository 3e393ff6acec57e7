using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Scenes;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>
/// Fixtures that stand flush in front of the openings of a house and the sides of its shells. What passes there passes them as
/// well; if the cover is a shell, it enters that shell's air.
/// </summary>
internal sealed class Covers
{
    /// <summary>
    /// How far in front of an opening or a side a fixture may stand and still cover it, metres: a few centimetres, and a slack for people who
    /// write just five.
    /// </summary>
    internal const double FlushMetres = 0.05 + GeometryTolerances.SlackMetres;

    private readonly Scene scene;
    private readonly Cells cells;
    private readonly Dictionary<FixtureBox, double> covering = []; // square metres that a solid thing covers
    private readonly Dictionary<(FixtureBox Box, int Side), List<Rectangle>> taken = []; // of a shell's sides

    internal Covers(Scene scene, Cells cells)
    {
        this.scene = scene;
        this.cells = cells;
    }

    /// <summary>How much of a surface a solid thing covers, square metres.</summary>
    internal double CoveredBy(FixtureBox box) => covering.GetValueOrDefault(box);

    /// <summary>The part of a shell's side that has not been found to cover something else.</summary>
    internal IEnumerable<Rectangle> FreeOf(FixtureBox box, int side, Rectangle whole) =>
        taken.GetValueOrDefault((box, side), []).Aggregate<Rectangle, IEnumerable<Rectangle>>(
            [whole], (left, gone) => left.SelectMany(rectangle => rectangle.Without(gone)));

    /// <summary>Cuts a rectangle of a plane by what covers it.</summary>
    /// <param name="plane">The plane.</param>
    /// <param name="rectangle">The rectangle.</param>
    /// <param name="between">What lies on its two sides, and what stands in it.</param>
    /// <param name="halfThicknessMetres">From the plane to the faces of what stands in it.</param>
    /// <param name="own">The shell it is a side of; null for a wall.</param>
    /// <param name="bySolids">Whether solid things cover it as well as shells.</param>
    internal IReadOnlyList<CoveredPart> Cut(
        in SurfacePlane plane, Rectangle rectangle, CoveredPart between, double halfThicknessMetres, FixtureBox? own, bool bySolids)
    {
        double reach = halfThicknessMetres + FlushMetres;
        var parts = new List<CoveredPart> { between with { Rectangle = rectangle } };
        foreach (FixtureBox box in Before(plane, rectangle, reach, own, bySolids))
        {
            Rectangle shadow = plane.ShadowOf(box);
            bool isBefore = Sum(plane.DistancesOf(box)) > 0;
            var cut = new List<CoveredPart>();
            foreach (CoveredPart part in parts)
            {
                Rectangle shared = part.Rectangle.With(shadow);
                if (!shared.IsAny || (isBefore ? part.IsCoveredBefore : part.IsCoveredBehind))
                {
                    cut.Add(part);
                    continue;
                }

                cut.AddRange(part.Rectangle.Without(shadow).Select(left => part with { Rectangle = left }));
                cut.Add(Covered(plane, part with { Rectangle = shared }, box, isBefore));
            }

            parts = cut;
        }

        return parts;
    }

    // Nearest first, and of equally near ones the one with the greatest loss, so that the order of listing does not matter.
    private IEnumerable<FixtureBox> Before(SurfacePlane plane, Rectangle rectangle, double reach, FixtureBox? own, bool bySolids)
    {
        Point3[] corners = plane.Corners(rectangle);
        return scene.BoxesNear(corners[0].Plan, corners[2].Plan, reach + (plane.Normal.Z == 0 ? 0 : own?.RadiusMetres ?? 0))
            .Where(box => box != own && !box.IsBody && (box.IsShell || bySolids) && IsFlush(box))
            .OrderBy(box => Math.Abs(Sum(plane.DistancesOf(box))))
            .ThenByDescending(box => scene.TableLossesDb[box.Material]);

        bool IsFlush(FixtureBox box)
        {
            (double near, double far) = plane.DistancesOf(box);
            bool isFlush = box.IsShell
                ? Math.Min(Math.Abs(near), Math.Abs(far)) <= reach && !(own is not null && (own.IsWithin(box) || box.IsWithin(own)))
                : near <= reach && far >= -reach;
            return isFlush && plane.HasAlong(box) && plane.ShadowOf(box).With(rectangle).IsAny;
        }
    }

    private CoveredPart Covered(in SurfacePlane plane, CoveredPart part, FixtureBox box, bool isBefore)
    {
        if (!box.IsShell)
        {
            covering[box] = CoveredBy(box) + part.Rectangle.SquareMetres;
            (double near, double far) = plane.DistancesOf(box);
            var sheet = new Sheet(box.Material, box.BulkThickness is double thickness ? (far - near) / thickness : null, box.HasMirrors);
            return part.With(sheet, null, isBefore);
        }

        int side = SideTowards(plane, box, isBefore);
        Rectangle own = plane.In(SurfacePlane.Of(box, side), part.Rectangle);
        if (!taken.TryGetValue((box, side), out List<Rectangle>? gone))
        {
            taken.Add((box, side), gone = []);
        }

        gone.Add(own);
        int material = box.PanelOn(FixtureBox.AllSides[side]);
        Sheet? panel = material == FixtureBox.Open ? null : new Sheet(material, null, box.HasMirrors && plane.Normal.Z == 0);
        return part.With(panel, cells.OfShell(box), isBefore);
    }

    private static int SideTowards(in SurfacePlane plane, FixtureBox box, bool isBefore)
    {
        int found = 0;
        double most = double.NegativeInfinity;
        for (int i = 0; i < FixtureBox.AllSides.Length; i++)
        {
            Point3 normal = SurfacePlane.Of(box, i).Normal;
            double facing = (isBefore ? -1 : 1) * normal.Dot(plane.Normal);
            if (facing > most)
            {
                (found, most) = (i, facing);
            }
        }

        return found;
    }

    private static double Sum((double Near, double Far) distances) => distances.Near + distances.Far;
}

/// <summary>A part of a plane with what lies behind it, what stands in it, and what lies in front of it.</summary>
/// <param name="Behind">The cell behind it.</param>
/// <param name="Before">The cell in front of it.</param>
/// <param name="Sheets">What stands in it, from back to front.</param>
internal sealed record CoveredPart(int Behind, int Before, Sheet[] Sheets)
{
    /// <summary>Where it is.</summary>
    internal Rectangle Rectangle { get; init; }

    /// <summary>Whether something covers it from the front.</summary>
    internal bool IsCoveredBefore { get; private init; }

    /// <summary>Whether something covers it from behind.</summary>
    internal bool IsCoveredBehind { get; private init; }

    /// <summary>The same with a cover.</summary>
    internal CoveredPart With(Sheet? sheet, int? cell, bool isBefore)
    {
        Sheet[] cover = sheet is { } one ? [one] : [];
        return isBefore
            ? this with { Sheets = [.. Sheets, .. cover], Before = cell ?? Before, IsCoveredBefore = true }
            : this with { Sheets = [.. cover, .. Sheets], Behind = cell ?? Behind, IsCoveredBehind = true };
    }
}
