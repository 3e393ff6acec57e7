using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// The lid, or the underside, of a shell that a ray from inside leaves by, with the sides around it: as a rectangle in the ray's front, each edge as
/// far from the line as it is there.
/// </summary>
internal static class LevelOutletFront
{
    /// <summary>Adds the lid or the underside and the sides around it.</summary>
    internal static void Gather(FixtureBox box, in Ray leg, in Outlet outlet, TraceBuffer buffer)
    {
        double dz = leg.To.Z - leg.From.Z, sinSlope = Math.Abs(dz) / leg.LengthMetres;
        double t = Math.Clamp((outlet.HeightMetres(box) - leg.From.Z) / dz, leg.Least, leg.Greatest);
        Point2 at = leg.PointAt(t).Plan;
        double rise = Math.Abs(outlet.HeightMetres(box) - outlet.From.Z);
        var whole = new Piece
        {
            Low = double.NegativeInfinity,
            High = double.PositiveInfinity,
            Bottom = double.NegativeInfinity,
            Top = double.PositiveInfinity,
            Plane = box.LevelPlane,
            Share = 1,
        };
        Piece plate = whole with { Material = box.PanelOn(outlet.Side), CosIncidence = sinSlope };

        // Two of its edges run more along the ray than the other two and bound the front to the left and right.
        Span<Piece> beyond = stackalloc Piece[4];
        Span<double> away = stackalloc double[4];
        for (int i = 0; i < beyond.Length; i++)
        {
            Point2 normal = box.OutwardOf(i);
            double onwards = (normal.X * leg.EastX) + (normal.Y * leg.NorthY);
            double left = (normal.Y * leg.EastX) - (normal.X * leg.NorthY);
            double depth = Math.Max(0, box.DepthBehind(i, at));
            double v = depth > 0 ? DistanceToEdge(leg, t, at, box.Corners[i], box.Corners[(i + 1) % box.Corners.Length], sinSlope) : 0;
            Point3 edge = (at + (depth * normal)).At(outlet.From.Z + rise);
            double across = Point2.Dot(edge.Plan - outlet.From.Plan, normal);
            away[i] = v;
            beyond[i] = whole with
            {
                Material = box.PanelOn(FixtureBox.PanelSides[i]),
                CosIncidence = ShellFront.Cosine(across, Math.Sqrt(Math.Max(0, Square(outlet.From.DistanceTo(edge)) - (across * across)))),
            };
            if (box.IsAcross(leg, i))
            {
                // On a lid that the ray rises through, what is farther onwards is below its line.
                bool isUnder = onwards > 0 == dz > 0;
                (beyond[i].Bottom, beyond[i].Top) = isUnder ? (double.NegativeInfinity, -v) : (v, double.PositiveInfinity);
                (plate.Bottom, plate.Top) = isUnder ? (-v, plate.Top) : (plate.Bottom, v);
            }
            else
            {
                (beyond[i].Low, beyond[i].High) = left > 0 ? (v, double.PositiveInfinity) : (double.NegativeInfinity, -v);
                (plate.Low, plate.High) = left > 0 ? (plate.Low, v) : (-v, plate.High);
            }
        }

        AddIfIn(buffer, plate, leg.Reach);
        for (int i = 0; i < beyond.Length; i++)
        {
            // Above and below the plate; what is beside it belongs to the other sides.
            ref Piece piece = ref beyond[i];
            bool isAcross = double.IsInfinity(piece.Low) && double.IsInfinity(piece.High);
            (piece.Low, piece.High) = isAcross ? (plate.Low, plate.High) : (piece.Low, piece.High);
            (piece.Share, double ofPlate) = ShellFront.Shares(away[(i + 2) % beyond.Length]);
            AddIfIn(buffer, piece, leg.Reach);
            if (ofPlate > 0)
            {
                AddIfIn(buffer, piece with { Material = plate.Material, CosIncidence = plate.CosIncidence, Share = ofPlate }, leg.Reach);
            }
        }
    }

    // How far an edge of a lid or underside is from the line, seen along it, v. The lid is foreshortened, so an edge aslant to the line would come near
    // only where it has ended already. The front is as wide as it is abreast of the edge.
    private static double DistanceToEdge(in Ray leg, double t, Point2 at, Point2 start, Point2 end, double sinSlope)
    {
        Point2 from = Seen(leg, start - at), along = Seen(leg, end - at) - from;
        double share = Math.Clamp(-Point2.Dot(from, along) / Point2.Dot(along, along), 0, 1);
        Point2 nearest = from + (share * along), place = start + (share * (end - start)) - at;
        double onwards = ((place.X * leg.EastX) + (place.Y * leg.NorthY)) * leg.CosSlope / leg.LengthMetres;
        return Math.Sqrt(2 * Point2.Dot(nearest, nearest)) / leg.RadiusAt(Math.Clamp(t + onwards, leg.Least, leg.Greatest));

        Point2 Seen(in Ray line, Point2 to) =>
            new((line.EastX * to.Y) - (line.NorthY * to.X), ((line.EastX * to.X) + (line.NorthY * to.Y)) * sinSlope);
    }

    private static void AddIfIn(TraceBuffer buffer, in Piece piece, in FrontReach reach)
    {
        if (piece.Material != FixtureBox.Open && piece.Share > 0
            && piece.Low < reach.End && piece.High > -reach.End
            && piece.Bottom < reach.End && piece.Top > -reach.End)
        {
            buffer.NextPiece() = piece;
        }
    }

    private static double Square(double x) => x * x;
}
