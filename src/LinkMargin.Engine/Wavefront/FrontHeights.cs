namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Heights in v on a ray's front. Those of a wall are measured above the place on the plan where the ray crosses it or comes nearest. Those of a box
/// are measured where its edges come closest to the line: of a steep line that is far from where they are on the plan, above all beside an end of it. A thing
/// that extends along the ray has its top where it is highest above the line, and its bottom where it is lowest below it.
/// </summary>
internal readonly struct FrontHeights
{
    private readonly double start;
    private readonly double scale; // v per metre, times R1
    private readonly double zone; // R1² over t(1 − t)
    private readonly double line; // at the place of a wall, the line's height
    private readonly double steps; // there, v per metre above it
    private readonly double reach; // v
    private readonly double sinSlope;
    private readonly double cosSlope;
    private readonly double lengthMetres; // of the ray; 0 for a wall's heights
    private readonly double least; // share of the length, where the zone has a width
    private readonly double from; // of a box, metres along the ray on the plan
    private readonly double to;

    private FrontHeights(in Ray ray)
    {
        start = ray.From.Z;
        scale = Math.Sqrt(2) * ray.CosSlope;
        zone = ray.ZoneSquareMetres;
        reach = ray.Reach.End;
    }

    private FrontHeights(in Ray ray, double t)
        : this(ray)
    {
        t = Math.Clamp(t, ray.Least, ray.Greatest);
        line = ray.HeightAt(t);
        steps = scale / ray.RadiusAt(t);
    }

    private FrontHeights(in Ray ray, double fromMetres, double toMetres)
        : this(ray)
    {
        scale = Math.Sqrt(2);
        sinSlope = (ray.To.Z - ray.From.Z) / ray.LengthMetres;
        cosSlope = ray.CosSlope;
        lengthMetres = ray.LengthMetres;
        least = ray.Least;
        (from, to) = (fromMetres, toMetres);
    }

    /// <summary>The heights of a wall at a share of a ray's length.</summary>
    internal static FrontHeights At(in Ray ray, double t) => new(ray, t);

    /// <summary>The heights of a box that stands between two places along a ray on the plan, metres from its start; one may lie beyond its ends.</summary>
    internal static FrontHeights OfBox(in Ray ray, double fromMetres, double toMetres) => new(ray, fromMetres, toMetres);

    /// <summary>Where on the front a height is at the first place, v: of a box as far towards the second as it is abreast of the ray.</summary>
    internal double Of(double heightMetres)
    {
        if (lengthMetres == 0)
        {
            return (heightMetres - line) * steps;
        }

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
        if (lengthMetres == 0 || double.IsInfinity(height))
        {
            return lengthMetres == 0 ? (height - (up * line)) * steps : height;
        }

        Edge first = EdgeAt(height, from, up);
        if (!(from < to))
        {
            return At(first);
        }

        Edge last = EdgeAt(height, to, up);
        (first, last) = (first.Abreast(last, least), last.Abreast(first, least));
        double greatest = Math.Max(At(first), At(last)), rise = (last.Offset - first.Offset) / (last.Along - first.Along);
        double atStart = first.Offset - (first.Along * rise), atEnd = atStart + rise;
        if (atStart < 0 && atEnd < 0 && atStart / (atStart + atEnd) is double t && t > first.Along && t < last.Along)
        {
            greatest = Math.Max(greatest, At(new Edge(atStart + (t * rise), t))); // where a line that clears it all along comes closest
        }

        return greatest;
    }

    private Edge EdgeAt(double height, double metres, int up)
    {
        double above = height - (up * start), sine = up * sinSlope;
        return new Edge((above * cosSlope) - (metres * sine), ((metres * cosSlope) + (above * sine)) / lengthMetres);
    }

    private double At(in Edge edge)
    {
        double t = Math.Clamp(edge.Along, least, 1 - least);
        return edge.Offset * scale / Math.Sqrt(zone * t * (1 - t));
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
