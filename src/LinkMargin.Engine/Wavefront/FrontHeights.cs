namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Heights in v on a ray's front, measured where the level edges come closest to the line: of a steep line that is far from where they are on the plan. The edges
/// of a wall are looked at from the place where the ray crosses it or comes nearest; a line that is steep and runs almost along the wall sees them aslant,
/// and passes them much closer than right above or below that place. A box that extends along the ray has its top where it is highest above the line, and
/// its bottom where it is lowest below it.
/// </summary>
internal readonly struct FrontHeights
{
    private readonly double start;
    private readonly double rise; // from the ray's start to its end, metres
    private readonly double lengthMetres;
    private readonly double cosSlope;
    private readonly double zone; // R1² over t(1 − t)
    private readonly double least; // share of the length, where the zone has a width
    private readonly double reach; // v
    private readonly bool isWall;
    private readonly double from; // of a wall, shares of the length; of a box, metres along the ray on the plan
    private readonly double to;
    private readonly double place; // of a wall
    private readonly double asideMetres;

    private FrontHeights(in Ray ray, double from, double to)
    {
        (start, rise, lengthMetres, cosSlope) = (ray.From.Z, ray.To.Z - ray.From.Z, ray.LengthMetres, ray.CosSlope);
        (zone, least, reach) = (ray.ZoneSquareMetres, ray.Least, ray.Reach.End);
        (this.from, this.to) = (from, to);
    }

    private FrontHeights(in Ray ray, double place, double asideMetres, double from, double to)
        : this(ray, Math.Min(from, place), Math.Max(to, place))
    {
        (isWall, this.place, this.asideMetres) = (true, place, asideMetres);
    }

    /// <summary>The heights of a wall.</summary>
    /// <param name="ray">The ray.</param>
    /// <param name="t">Where the ray crosses the wall or comes nearest, share of its length.</param>
    /// <param name="asideMetres">How far the wall's plane leads away from the ray on the plan, metres over the whole length of the ray; infinite for one across it.</param>
    /// <param name="runFrom">Where the wall starts abreast of the ray, share of its length.</param>
    /// <param name="runTo">Where it ends.</param>
    internal static FrontHeights OfWall(in Ray ray, double t, double asideMetres, double runFrom, double runTo) =>
        new(ray, Math.Clamp(t, ray.Least, ray.Greatest), asideMetres, runFrom, runTo);

    /// <summary>The heights of a box that stands between two places along a ray on the plan, metres from its start; one may lie beyond its ends.</summary>
    internal static FrontHeights OfBox(in Ray ray, double fromMetres, double toMetres) => new(ray, fromMetres, toMetres);

    /// <summary>Where on the front a height of a box is at the first place, v, or as far towards the second as it is abreast of the ray.</summary>
    internal double Of(double heightMetres)
    {
        Edge first = EdgeAt(heightMetres, from, 1);
        return At(from == to ? first : first.Abreast(EdgeAt(heightMetres, to, 1), least));
    }

    /// <summary>Adds a piece between two heights, and its image in a floor or ceiling.</summary>
    internal void Add(TraceBuffer buffer, in Fold fold, in Piece piece, double bottomMetres, double topMetres)
    {
        (double bottom, double top) = fold.Before(bottomMetres, topMetres);
        if (bottom >= top)
        {
            return;
        }

        if (!fold.IsLevel)
        {
            Add(buffer, piece, bottom, top);
        }
        else if (bottom <= fold.Height && top >= fold.Height)
        {
            // It touches the mirror, and continues without a gap in its image.
            Add(buffer, piece, Math.Min(bottom, fold.Image(top)), Math.Max(top, fold.Image(bottom)));
        }
        else
        {
            Add(buffer, piece, bottom, top);
            Add(buffer, piece, fold.Image(top), fold.Image(bottom));
        }
    }

    private void Add(TraceBuffer buffer, in Piece piece, double bottomMetres, double topMetres)
    {
        double bottom = -Greatest(-bottomMetres, -1), top = Greatest(topMetres, 1);
        if (bottom < reach && top > -reach)
        {
            ref Piece added = ref buffer.NextPiece();
            added = piece;
            added.Bottom = bottom;
            added.Top = top;
        }
    }

    // The greatest v of a height above the line, or with both turned upside down.
    private double Greatest(double height, int up)
    {
        if (double.IsInfinity(height))
        {
            return height;
        }

        if (isWall)
        {
            return up * OfWall(up * height);
        }

        Edge first = EdgeAt(height, from, up);
        if (!(from < to))
        {
            return At(first);
        }

        Edge last = EdgeAt(height, to, up);
        (first, last) = (first.Abreast(last, least), last.Abreast(first, least));
        double greatest = Math.Max(At(first), At(last)), slope = (last.Offset - first.Offset) / (last.Along - first.Along);
        double atStart = first.Offset - (first.Along * slope), atEnd = atStart + slope;
        if (atStart < 0 && atEnd < 0 && atStart / (atStart + atEnd) is double t && t > first.Along && t < last.Along)
        {
            greatest = Math.Max(greatest, At(new Edge(atStart + (t * slope), t))); // where a line that clears it all along comes closest
        }

        return greatest;
    }

    // Where a level edge of a wall comes closest to the line, v.
    private double OfWall(double height)
    {
        double above = height - start - (place * rise), perSquare = rise / (lengthMetres * lengthMetres);
        if (rise == 0 || double.IsInfinity(asideMetres))
        {
            return At(new Edge(above * cosSlope, place + (above * perSquare)));
        }

        double across = asideMetres / cosSlope, step = Math.Clamp(place + (rise * above / ((across * across) + (rise * rise))), from, to) - place;
        double left = asideMetres * step, up = above - (rise * step), offset = Math.Sqrt((left * left) + (up * up * cosSlope * cosSlope));
        return At(new Edge(Math.CopySign(offset, above), place + step + (up * perSquare)));
    }

    private Edge EdgeAt(double height, double metres, int up)
    {
        double above = height - (up * start), sine = up * rise / lengthMetres;
        return new Edge((above * cosSlope) - (metres * sine), ((metres * cosSlope) + (above * sine)) / lengthMetres);
    }

    private double At(in Edge edge)
    {
        double t = Math.Clamp(edge.Along, least, 1 - least);
        return edge.Offset * Math.Sqrt(2) / Math.Sqrt(zone * t * (1 - t));
    }

    // A level edge across the ray: how far it is above the line, perpendicular to that, metres, and where it is abreast, share of the ray's length.
    private readonly record struct Edge(double Offset, double Along)
    {
        // The same, or the first place towards another edge of the same height that is not behind an end of the ray. From one to the other the offset
        // changes evenly.
        internal Edge Abreast(in Edge other, double least)
        {
            double along = Math.Clamp(Along, least, 1 - least);
            if (along == Along || other.Along == Along)
            {
                return this;
            }

            double share = Math.Clamp((along - Along) / (other.Along - Along), 0, 1);
            return new Edge(Offset + (share * (other.Offset - Offset)), Along + (share * (other.Along - Along)));
        }
    }
}
