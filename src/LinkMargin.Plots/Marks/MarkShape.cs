using LinkMargin.Engine.Geometry;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Marks;

/// <summary>
/// The shapes of marks. A seat is a disc (full: it passes; ring with a bar: it does not), a spot a diamond (full: on this
/// level; dashed: on another), a place to measure at a square with a cross. The shape alone is enough; colour only helps.
/// </summary>
internal static class MarkShape
{
    /// <summary>Radius of a mark, points.</summary>
    public const double RadiusPoints = 5.5;

    /// <summary>Length of the pointer that shows where a player faces, points.</summary>
    public const double FacingPoints = 9;

    public static void Draw(SKCanvas canvas, MarkKind kind, SKPoint at, double? facingDegrees, double pixelsPerPoint)
    {
        if (kind is MarkKind.SpotHere or MarkKind.SpotElsewhere)
        {
            DrawSpot(canvas, kind == MarkKind.SpotHere, at, pixelsPerPoint);
            return;
        }

        if (kind == MarkKind.Measurement)
        {
            DrawMeasurement(canvas, at, pixelsPerPoint);
            return;
        }

        if (kind == MarkKind.CableEnd)
        {
            DrawCableEnd(canvas, at, pixelsPerPoint);
            return;
        }

        if (facingDegrees is double facing)
        {
            DrawFacing(canvas, at, facing, pixelsPerPoint);
        }

        float radius = (float)(4 * pixelsPerPoint);
        using SKPaint rim = Pen.Fill(Palette.Paper);
        using SKPaint ink = Pen.Fill(Palette.Ink);
        canvas.DrawCircle(at, radius + (float)(1.2 * pixelsPerPoint), rim);
        canvas.DrawCircle(at, radius, ink);
        if (kind != MarkKind.SeatPasses)
        {
            canvas.DrawCircle(at, radius - (float)(1.4 * pixelsPerPoint), rim);
        }

        if (kind == MarkKind.SeatBelow)
        {
            using SKPaint bar = Pen.Line(Palette.Ink, 1.4 * pixelsPerPoint);
            float reach = radius * 0.7f;
            canvas.DrawLine(at.X - reach, at.Y + reach, at.X + reach, at.Y - reach, bar);
        }
    }

    private static void DrawMeasurement(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        float reach = (float)(4.2 * pixelsPerPoint);
        var box = new SKRect(at.X - reach, at.Y - reach, at.X + reach, at.Y + reach);
        using SKPaint rim = Pen.Line(Palette.Paper, 3.6 * pixelsPerPoint), fill = Pen.Fill(Palette.Paper), line = Pen.Line(Palette.Ink, 1.3 * pixelsPerPoint);
        canvas.DrawRect(box, rim);
        canvas.DrawRect(box, fill);
        canvas.DrawRect(box, line);
        canvas.DrawLine(at.X - reach, at.Y, at.X + reach, at.Y, line);
        canvas.DrawLine(at.X, at.Y - reach, at.X, at.Y + reach, line);
    }

    private static void DrawCableEnd(SKCanvas canvas, SKPoint at, double pixelsPerPoint)
    {
        float reach = (float)(3.4 * pixelsPerPoint);
        var box = new SKRect(at.X - reach, at.Y - reach, at.X + reach, at.Y + reach);
        using SKPaint rim = Pen.Line(Palette.Paper, 3.6 * pixelsPerPoint), fill = Pen.Fill(Palette.Ink);
        canvas.DrawRect(box, rim);
        canvas.DrawRect(box, fill);
    }

    private static void DrawSpot(SKCanvas canvas, bool isHere, SKPoint at, double pixelsPerPoint)
    {
        float reach = (float)(RadiusPoints * pixelsPerPoint);
        using var diamond = new SKPath();
        diamond.AddPoly(
            [new(at.X, at.Y - reach), new(at.X + reach, at.Y), new(at.X, at.Y + reach), new(at.X - reach, at.Y)], close: true);
        using SKPaint rim = Pen.Line(Palette.Paper, 3.2 * pixelsPerPoint);
        canvas.DrawPath(diamond, rim);
        using SKPaint fill = Pen.Fill(isHere ? Palette.Spot : Palette.Paper);
        canvas.DrawPath(diamond, fill);
        using SKPaint line = isHere
            ? Pen.Line(Palette.Spot, 0.8 * pixelsPerPoint)
            : Pen.Dashed(Palette.Spot, 1.5 * pixelsPerPoint, 2.6 * pixelsPerPoint, 1.3 * pixelsPerPoint);
        canvas.DrawPath(diamond, line);
    }

    // A pointer outside the disc, only a little longer than the mark's own radius.
    private static void DrawFacing(SKCanvas canvas, SKPoint at, double facingDegrees, double pixelsPerPoint)
    {
        double angle = facingDegrees * Math.PI / 180, reach = FacingPoints * pixelsPerPoint, side = 4.2 * pixelsPerPoint;
        SKPoint Point(double turn, double length) =>
            new((float)(at.X + (length * Math.Cos(angle + turn))), (float)(at.Y - (length * Math.Sin(angle + turn))));
        using var wedge = new SKPath();
        wedge.AddPoly([Point(0, reach), Point(1.15, side), Point(-1.15, side)], close: true);
        using SKPaint rim = Pen.Line(Palette.Paper, 2.0 * pixelsPerPoint);
        using SKPaint ink = Pen.Fill(Palette.Ink);
        canvas.DrawPath(wedge, rim);
        canvas.DrawPath(wedge, ink);
    }
}

/// <summary>The meaning of a mark on a plan; decides its shape.</summary>
internal enum MarkKind
{
    /// <summary>A seat that has its required margin.</summary>
    SeatPasses,

    /// <summary>A seat that does not.</summary>
    SeatBelow,

    /// <summary>A seat on a plan without margins.</summary>
    SeatPlain,

    /// <summary>A spot on the level drawn.</summary>
    SpotHere,

    /// <summary>A spot on another level.</summary>
    SpotElsewhere,

    /// <summary>A place to measure at.</summary>
    Measurement,

    /// <summary>Where a cable ends.</summary>
    CableEnd,
}

/// <summary>A point on a plan with a shape and a label.</summary>
/// <param name="Kind">Its meaning.</param>
/// <param name="Place">Its position, metres.</param>
/// <param name="Name">First part of the label.</param>
/// <param name="Figure">Second part, below the first; empty for none.</param>
/// <param name="FacingDegrees">Where a player faces, anticlockwise from x; null for none.</param>
internal sealed record PlanMark(MarkKind Kind, Point2 Place, string Name, string Figure, double? FacingDegrees)
{
    /// <summary>Whether the second part is only a note and is not bold.</summary>
    public bool IsRemark { get; init; }

    /// <summary>Whether the first part is a number that a key explains.</summary>
    public bool IsNumbered { get; init; }
}
