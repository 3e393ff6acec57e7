using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Paths.Diffuse;

/// <summary>The part of a room's floor or ceiling behind which one cell lies.</summary>
/// <param name="Other">That cell.</param>
/// <param name="IsVoid">Whether it is a hole.</param>
/// <param name="SquareMetres">Its area.</param>
/// <param name="Outline">The rectangle that stands for it, with its area, centroid and proportions.</param>
internal sealed record PlatePart(int Other, bool IsVoid, double SquareMetres, Point2[] Outline)
{
    private const double LeastSquareMetres = 1e-6;

    /// <summary>The parts of a room's floor or ceiling.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="frame">The house's directions.</param>
    /// <param name="outline">The room.</param>
    /// <param name="otherLevel">The level behind; −1 for none.</param>
    /// <param name="rooms">That level's rooms.</param>
    /// <param name="voids">Holes in it, which do not overlap.</param>
    internal static IEnumerable<PlatePart> Of(
        Cells cells, PlanFrame frame, Polygon outline, int otherLevel, IReadOnlyList<Room> rooms, IReadOnlyList<Polygon> voids)
    {
        // First the plate without its holes, divided by what lies behind it; then each hole in the same way.
        foreach (PlatePart part in Behind(cells, frame, outline, null, otherLevel, rooms, voids))
        {
            yield return part;
        }

        foreach (Polygon hole in voids)
        {
            foreach (PlatePart part in Behind(cells, frame, outline, hole, otherLevel, rooms, []))
            {
                yield return part;
            }
        }
    }

    private static IEnumerable<PlatePart> Behind(
        Cells cells,
        PlanFrame frame,
        Polygon outline,
        Polygon? hole,
        int otherLevel,
        IReadOnlyList<Room> rooms,
        IReadOnlyList<Polygon> without)
    {
        Overlap all = Shared(frame, outline, hole, null, without);
        double outdoors = all.SquareMetres;
        for (int i = 0; i < rooms.Count; i++)
        {
            if (Overlap.AreApart(outline, rooms[i].Outline))
            {
                continue;
            }

            Overlap part = Shared(frame, outline, hole, rooms[i].Outline, without);
            outdoors -= part.SquareMetres;
            if (part.SquareMetres > LeastSquareMetres)
            {
                yield return Of(cells.OfRoom(otherLevel, i), hole is not null, part, frame);
            }
        }

        if (outdoors > LeastSquareMetres)
        {
            yield return Of(Cells.Outdoors, hole is not null, all with { SquareMetres = outdoors }, frame);
        }
    }

    private static Overlap Shared(
        PlanFrame frame, Polygon outline, Polygon? hole, Polygon? behind, IReadOnlyList<Polygon> without)
    {
        Polygon[] shapes = [.. new[] { outline, hole, behind }.OfType<Polygon>()];
        Overlap shared = Overlap.Of(frame, shapes);
        double area = shared.SquareMetres;
        foreach (Polygon gone in without)
        {
            area -= Overlap.Of(frame, [.. shapes, gone]).SquareMetres;
        }

        return shared with { SquareMetres = Math.Max(0, area) };
    }

    private static PlatePart Of(int other, bool isVoid, Overlap part, PlanFrame frame)
    {
        const double LeastSpread = 0.02;
        double ratio = Math.Max(part.SpreadMetres.X, LeastSpread) / Math.Max(part.SpreadMetres.Y, LeastSpread);
        double width = Math.Sqrt(part.SquareMetres * ratio), depth = part.SquareMetres / width;
        Point2 along = frame.ToPlan(width / 2, 0), across = frame.ToPlan(0, depth / 2);
        return new PlatePart(
            other,
            isVoid,
            part.SquareMetres,
            [
                part.Middle - along - across,
                part.Middle + along - across,
                part.Middle + along + across,
                part.Middle - along + across,
            ]);
    }
}
