namespace LinkMargin.Plots.Labels;

/// <summary>An axis-aligned rectangle on a picture, pixels, y pointing down.</summary>
internal readonly record struct LabelBox(double Left, double Top, double Right, double Bottom)
{
    public double Width => Right - Left;

    public double Height => Bottom - Top;

    public double CentreX => (Left + Right) / 2;

    public double CentreY => (Top + Bottom) / 2;

    public static LabelBox Around(double x, double y, double halfWidth, double halfHeight) =>
        new(x - halfWidth, y - halfHeight, x + halfWidth, y + halfHeight);

    public LabelBox Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);

    public bool Overlaps(LabelBox other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Contains(LabelBox other) =>
        Left <= other.Left && Top <= other.Top && Right >= other.Right && Bottom >= other.Bottom;

    /// <summary>Area shared with another box, square pixels.</summary>
    public double SharedArea(LabelBox other)
    {
        double width = Math.Min(Right, other.Right) - Math.Max(Left, other.Left);
        double height = Math.Min(Bottom, other.Bottom) - Math.Max(Top, other.Top);
        return width > 0 && height > 0 ? width * height : 0;
    }

    /// <summary>Distance from a point to the box, 0 inside it.</summary>
    public double DistanceTo(double x, double y) =>
        double.Hypot(x - Math.Clamp(x, Left, Right), y - Math.Clamp(y, Top, Bottom));

    /// <summary>Whether a straight line from one point to another passes over the box (Liang and Barsky's clipping).</summary>
    public bool IsCrossedBy(double x0, double y0, double x1, double y1)
    {
        double enter = 0, leave = 1;
        return Clip(x1 - x0, Left - x0, Right - x0, ref enter, ref leave)
            && Clip(y1 - y0, Top - y0, Bottom - y0, ref enter, ref leave);
    }

    private static bool Clip(double run, double least, double greatest, ref double enter, ref double leave)
    {
        if (run == 0)
        {
            return least < 0 && greatest > 0;
        }

        double a = least / run, b = greatest / run;
        enter = Math.Max(enter, Math.Min(a, b));
        leave = Math.Min(leave, Math.Max(a, b));
        return enter < leave;
    }
}
