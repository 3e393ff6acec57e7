using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Marks;

/// <summary>
/// How a mark's label is written: a name with its figure below, or a number and its figure on one line. The figure of a seat has
/// a tick if it passes or a cross if it fails, and the label of a seat that fails is inverted.
/// </summary>
internal sealed class LabelLetters : IDisposable
{
    private const double LineShare = 0.98;

    private readonly PlanView view;
    private readonly double sizePoints;
    private readonly Lettering bold;

    public LabelLetters(PlanView view, double sizePoints)
    {
        (this.view, this.sizePoints) = (view, sizePoints);
        Name = new(view.Points(sizePoints), isBold: false);
        bold = new(view.Points(sizePoints), isBold: true);
    }

    /// <summary>The lettering of names.</summary>
    public Lettering Name { get; }

    private double PadX => view.Points(3.5);

    private double PadY => view.Points(3);

    private double Space => view.Points(sizePoints * 0.45);

    private double SignWidth => 0.9 * bold.CapHeight;

    public void Dispose()
    {
        Name.Dispose();
        bold.Dispose();
    }

    /// <summary>The size of a mark's label, and the position of the mark.</summary>
    public LabelRequest RequestFor(PlanMark mark)
    {
        double name = FirstOf(mark).WidthOf(mark.Name), figure = FigureWidth(mark);
        bool isOneLine = IsOneLine(mark);
        double width = isOneLine ? name + (figure > 0 ? Space + figure : 0) : Math.Max(name, figure);
        return new(
            view.PixelX(mark.Place.X),
            view.PixelY(mark.Place.Y),
            view.Points(mark.FacingDegrees is null ? MarkShape.RadiusPoints + 1 : MarkShape.FacingPoints),
            width + (2 * PadX),
            bold.CapHeight + (isOneLine ? 0 : LineShare * bold.LineHeight) + (2 * PadY));
    }

    public void DrawLeader(SKCanvas canvas, SKPoint from, LabelBox box)
    {
        var to = new SKPoint(
            (float)Math.Clamp(from.X, box.Left + PadX, box.Right - PadX), (float)Math.Clamp(from.Y, box.Top, box.Bottom));
        using SKPaint casing = Pen.Line(Palette.Paper, view.Points(2.6));
        using SKPaint line = Pen.Line(Palette.Ink, view.Points(0.8));
        canvas.DrawLine(from, to, casing);
        canvas.DrawLine(from, to, line);
    }

    public void Draw(SKCanvas canvas, PlanMark mark, LabelBox box)
    {
        bool isSpot = mark.Kind is MarkKind.SpotHere or MarkKind.SpotElsewhere;
        DrawGround(canvas, box, isSpot, mark.Kind == MarkKind.SeatBelow, view.PixelsPerPoint);
        SKColor ink = InkOf(isSpot, mark.Kind == MarkKind.SeatBelow);
        double left = box.Left + PadX, top = box.Top + PadY + (bold.CapHeight / 2);
        FirstOf(mark).WriteMiddle(canvas, mark.Name, left, top, ink);
        if (mark.Figure.Length == 0)
        {
            return;
        }

        double x = IsOneLine(mark) ? box.Right - PadX - FigureWidth(mark) : left;
        double y = IsOneLine(mark) ? top : top + (LineShare * bold.LineHeight);
        if (HasSign(mark))
        {
            PassSign.Draw(canvas, mark.Kind == MarkKind.SeatPasses, x, y, SignWidth, ink);
            x += SignWidth + (0.8 * Space);
        }

        SecondOf(mark).WriteMiddle(canvas, mark.Figure, x, y, ink);
    }

    /// <summary>Draws the background of a label, without its letters.</summary>
    public static void DrawGround(SKCanvas canvas, LabelBox box, bool isSpot, bool isReversed, double pixelsPerPoint)
    {
        using SKPaint ground = Pen.Fill(isReversed ? Palette.Ink : Palette.Paper.WithAlpha(235));
        using SKPaint rim = Pen.Line(isReversed ? Palette.Paper : InkOf(isSpot, isReversed), 0.7 * pixelsPerPoint);
        var rect = new SKRoundRect(
            new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom), (float)(1.5 * pixelsPerPoint));
        canvas.DrawRoundRect(rect, ground);
        canvas.DrawRoundRect(rect, rim);
    }

    private static SKColor InkOf(bool isSpot, bool isReversed) => isReversed ? Palette.Paper : isSpot ? Palette.Spot : Palette.Ink;

    private static bool IsOneLine(PlanMark mark) => mark.IsNumbered || mark.Figure.Length == 0;

    private static bool HasSign(PlanMark mark) => (mark.Kind is MarkKind.SeatPasses or MarkKind.SeatBelow) && mark.Figure.Length > 0 && !mark.IsRemark;

    private Lettering FirstOf(PlanMark mark) => mark.IsNumbered ? bold : Name;

    private Lettering SecondOf(PlanMark mark) => mark.IsRemark ? Name : bold;

    private double FigureWidth(PlanMark mark) => mark.Figure.Length == 0
        ? 0
        : SecondOf(mark).WidthOf(mark.Figure) + (HasSign(mark) ? SignWidth + (0.8 * Space) : 0);
}

/// <summary>A tick for a pass, a cross for a fail, bold enough to be readable at a small size.</summary>
internal static class PassSign
{
    /// <summary>Draws the sign.</summary>
    /// <param name="canvas">Where to draw.</param>
    /// <param name="passes">Whether to draw a tick.</param>
    /// <param name="left">Its left side, pixels.</param>
    /// <param name="middle">Its middle line, pixels.</param>
    /// <param name="width">Its width and height, pixels.</param>
    /// <param name="ink">Its colour.</param>
    public static void Draw(SKCanvas canvas, bool passes, double left, double middle, double width, SKColor ink)
    {
        SKPoint At(double x, double y) => new((float)(left + (x * width)), (float)(middle + ((y - 0.5) * width)));
        using SKPaint line = Pen.Line(ink, 0.22 * width);
        using SKPath path = new();
        if (passes)
        {
            path.AddPoly([At(0.06, 0.55), At(0.38, 0.9), At(0.94, 0.12)], close: false);
        }
        else
        {
            path.AddPoly([At(0.1, 0.1), At(0.9, 0.9)], close: false);
            path.AddPoly([At(0.9, 0.1), At(0.1, 0.9)], close: false);
        }

        canvas.DrawPath(path, line);
    }
}
