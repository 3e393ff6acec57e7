using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;

namespace LinkMargin.Engine.Decisions.Remedies;

/// <summary>Where the faces of a wall are: half its thickness from its line on the plan.</summary>
internal static class WallFaces
{
    /// <summary>The area that it covers on the plan.</summary>
    public static Polygon Body(Wall wall)
    {
        Point2 along = (1 / wall.LengthMetres) * (wall.End - wall.Start);
        Point2 half = wall.HalfThicknessMetres * new Point2(-along.Y, along.X);
        return new Polygon([wall.Start - half, wall.End - half, wall.End + half, wall.Start + half]);
    }

    /// <summary>From a place to its nearer face, metres; 0 or less inside it.</summary>
    public static double DistanceTo(Wall wall, Point2 place)
    {
        Point2 along = wall.End - wall.Start;
        double share = Math.Clamp(Point2.Dot(place - wall.Start, along) / Point2.Dot(along, along), 0, 1);
        return place.DistanceTo(wall.Start + (share * along)) - wall.HalfThicknessMetres;
    }

    /// <summary>Whether its own material, and no opening, is there at a height within a distance on either side.</summary>
    /// <param name="wall">The wall.</param>
    /// <param name="alongMetres">From its start along it.</param>
    /// <param name="heightMetres">Above the level's floor.</param>
    /// <param name="clearMetres">Least distance of openings.</param>
    public static bool IsSolidAt(Wall wall, double alongMetres, double heightMetres, double clearMetres) =>
        alongMetres >= 0 && alongMetres <= wall.LengthMetres
        && heightMetres >= wall.BaseMetres && heightMetres <= wall.TopMetres
        && !wall.Openings.Any(opening =>
            alongMetres > opening.OffsetMetres - clearMetres
            && alongMetres < opening.OffsetMetres + opening.WidthMetres + clearMetres
            && heightMetres > opening.SillMetres - clearMetres
            && heightMetres < opening.SillMetres + opening.HeightMetres + clearMetres);
}
