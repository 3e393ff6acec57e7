namespace LinkMargin.Engine.Wavefront;

/// <summary>
/// Heights in v on a ray's front, at one place along it or between two: a thing that extends along the ray has its top where it
/// is highest above the line, and its bottom where it is lowest below it.
/// </summary>
internal readonly struct FrontHeights
{
    private readonly double start;
    private readonly double rise;
    private readonly double scale; // v per metre, times R1
    private readonly double zone; // R1² over t(1 − t)
    private readonly double from;
    private readonly double to;
    private readonly double line; // at the first place, the line's height
    private readonly double steps; // there, v per metre above it
    private readonly double reach; // v

    private FrontHeights(in Ray ray, double from, double to)
    {
        start = ray.From.Z;
        rise = ray.To.Z - ray.From.Z;
        scale = Math.Sqrt(2) * ray.CosSlope;
        zone = ray.ZoneSquareMetres;
        this.from = from;
        this.to = to;
        line = ray.HeightAt(from);
        steps = scale / ray.RadiusAt(from);
        reach = ray.Reach.End;
    }

    /// <summary>The heights at a share of a ray's length.</summary>
    internal static FrontHeights At(in Ray ray, double t) => Between(ray, t, t);

    /// <summary>The heights between two shares of a ray's length.</summary>
    internal static FrontHeights Between(in Ray ray, double from, double to) =>
        new(ray, Math.Max(from, ray.Least), Math.Min(to, ray.Greatest));

    /// <summary>Where on the front a height is at the first place, v.</summary>
    internal double Of(double heightMetres) => (heightMetres - line) * steps;

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
        double greatest = (height - (up * line)) * steps;
        if (!(from < to) || double.IsInfinity(height))
        {
            return greatest;
        }

        double first = height - (up * start), last = first - (up * rise);
        greatest = Math.Max(greatest, At(first, last, to));
        if (first < 0 && last < 0 && first / (first + last) is double t && t > from && t < to)
        {
            greatest = Math.Max(greatest, At(first, last, t)); // where a line that clears it all along comes closest
        }

        return greatest;
    }

    private double At(double first, double last, double t) =>
        (((1 - t) * first) + (t * last)) * scale / Math.Sqrt(zone * t * (1 - t));
}
