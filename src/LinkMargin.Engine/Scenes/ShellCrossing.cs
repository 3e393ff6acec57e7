using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Scenes;

/// <summary>
/// The lid and the underside in the front of a ray that runs through a shell, with both its ends outside. What comes in over the edge of one side and
/// goes out below that of another, or the other way round, has passed the lid; so with the underside. An opaque shell with an open side
/// therefore shades a place behind that side like a solid thing, and a place that passes the open side sees the same from both sides of it.
/// </summary>
internal static class ShellCrossing
{
    /// <summary>How many sides a ray may come in and go out by: the upright ones, and an end of it above or below the footprint.</summary>
    internal const int MostSides = 6;

    private const int FirstEnd = 4;

    /// <summary>
    /// Whether a ray of which no leg leaves the shell from inside may come in and go out by two sides: its ends are not both inside, nor both above or
    /// below the footprint.
    /// </summary>
    internal static bool IsThrough(FixtureBox box, in Ray ray) =>
        !(box.Covers(ray.From.Plan) && box.Covers(ray.To.Plan)) && !box.Holds(ray.End == 1 ? ray.To : ray.From);

    /// <summary>Whether there is a plate that something may pass above or below.</summary>
    /// <param name="box">The shell.</param>
    /// <param name="bottom">Where the shell's sides start for a ray, metres above the lowest floor; −∞ where nothing passes below.</param>
    /// <param name="top">Where they end; ∞ where nothing passes above.</param>
    internal static bool HasPlates(FixtureBox box, double bottom, double top) =>
        (!double.IsInfinity(bottom) && box.PanelOn(BoxSides.Bottom) != FixtureBox.Open) || (!double.IsInfinity(top) && box.PanelOn(BoxSides.Top) != FixtureBox.Open);

    /// <summary>Adds the pieces.</summary>
    /// <param name="box">The shell.</param>
    /// <param name="ray">The ray.</param>
    /// <param name="fold">Where it is reflected.</param>
    /// <param name="buffer">Receives the pieces.</param>
    /// <param name="sides">The upright sides in the front, and room for the ends.</param>
    /// <param name="bottom">As for <see cref="HasPlates"/>.</param>
    /// <param name="top">The same.</param>
    internal static void Gather(FixtureBox box, in Ray ray, in Fold fold, TraceBuffer buffer, Span<SideCrossed> sides, double bottom, double top)
    {
        if ((ray.Start == 0 || fold.IsLevel) && box.Covers(ray.From.Plan))
        {
            sides[FirstEnd] = End(box, ray, ray.Least, isStart: true);
        }

        if (ray.End == 1 && box.Covers(ray.To.Plan))
        {
            sides[FirstEnd + 1] = End(box, ray, ray.Greatest, isStart: false);
        }

        // Each upright line on the front crosses two sides, or one from an end above or below the footprint.
        for (int i = 0; i < sides.Length; i++)
        {
            for (int j = i + 1; j < sides.Length; j++)
            {
                double low = Math.Max(sides[i].Low, sides[j].Low), high = Math.Min(sides[i].High, sides[j].High);
                if (low < high)
                {
                    var piece = new Piece { Low = low, High = high, Share = 1 };
                    bool isFirst = sides[i].Along <= sides[j].Along;
                    SideCrossed entered = sides[isFirst ? i : j], left = sides[isFirst ? j : i];
                    Add(box.PanelOn(BoxSides.Bottom), bottom, isLid: false, piece, ray, fold, buffer, entered, left);
                    Add(box.PanelOn(BoxSides.Top), top, isLid: true, piece, ray, fold, buffer, entered, left);
                }
            }
        }
    }

    // An end above or below the footprint: the plates go on beyond it, to the side that the line would come to there.
    private static SideCrossed End(FixtureBox box, in Ray ray, double along, bool isStart)
    {
        double end = along * ray.PlanMetres, edge = end;
        if (box.ChordOf(ray.From.Plan, new Point2(ray.EastX, ray.NorthY)) is var (enter, leave))
        {
            edge = isStart ? Math.Min(enter, end) : Math.Max(leave, end);
        }

        return new SideCrossed(box.LevelPlane, double.NegativeInfinity, double.PositiveInfinity, along, FrontHeights.OfBox(ray, edge, end));
    }

    // A plate in the plane of the floor or ceiling that reflects the path is passed once, where it is reflected: not here.
    private static void Add(
        int material, double height, bool isLid, Piece piece, in Ray ray, in Fold fold, TraceBuffer buffer, in SideCrossed entered, in SideCrossed left)
    {
        if (material == FixtureBox.Open || double.IsInfinity(height) || (fold.IsLevel && Math.Abs(height - fold.Height) <= GeometryTolerances.SlackMetres))
        {
            return;
        }

        piece.Material = material;
        AddBetween(height, isLid, piece, ray, buffer, entered, left);
        if (fold.IsLevel)
        {
            AddBetween(fold.Image(height), !isLid, piece, ray, buffer, entered, left);
        }
    }

    // The stretch of the front between a height at one side and the same height at the other. It shares the plane of the side whose edge it continues, so
    // that no gap opens between them.
    private static void AddBetween(
        double height, bool isAbove, Piece piece, in Ray ray, TraceBuffer buffer, in SideCrossed entered, in SideCrossed left)
    {
        double one = entered.Heights.Of(height), other = left.Heights.Of(height);
        (piece.Bottom, piece.Top) = (Math.Min(one, other), Math.Max(one, other));
        if (piece.Top - piece.Bottom <= FrontEdges.SameEdge || piece.Bottom >= ray.Reach.End || piece.Top <= -ray.Reach.End)
        {
            return;
        }

        piece.Plane = one < other == isAbove ? entered.Plane : left.Plane;

        // What the line does not pass itself comes over the edge nearer to it and down, or up, to the end beyond the shell.
        piece.CosIncidence = one > 0 != other > 0 ? Math.Abs(ray.To.Z - ray.From.Z) / ray.LengthMetres
            : Math.Abs(one) < Math.Abs(other) ? ShellFront.Cosine(height - ray.To.Z, (1 - entered.Along) * ray.PlanMetres)
            : ShellFront.Cosine(height - ray.From.Z, left.Along * ray.PlanMetres);
        buffer.NextPiece() = piece;
    }
}

/// <summary>A side of a shell in the front of a ray through it; of no width where it is not in the front.</summary>
/// <param name="Plane">Its plane, by number.</param>
/// <param name="Low">The right end of the stretch that it takes up, v.</param>
/// <param name="High">The left end.</param>
/// <param name="Along">Where along the ray it is crossed or nearest, share of the ray's length.</param>
/// <param name="Heights">The heights there.</param>
internal readonly record struct SideCrossed(int Plane, double Low, double High, double Along, FrontHeights Heights);
