using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>The labels of a plan's marks, each with the place found for it.</summary>
internal sealed class MarkLabels
{
    private readonly IReadOnlyList<PlanMark> marks;
    private readonly PlanMark[] labelled;
    private readonly IReadOnlyList<PlacedLabel> places;
    private readonly PlanView view;
    private readonly double sizePoints;

    /// <summary>Finds places for the labels of some marks.</summary>
    /// <param name="view">The view.</param>
    /// <param name="marks">The marks.</param>
    /// <param name="soft">Ground that labels had better not cover, pixels.</param>
    /// <param name="sizePoints">Size of letters, points.</param>
    /// <param name="hard">Ground that labels may not cover, pixels; null for none.</param>
    /// <param name="ground">Ground that labels may not cover but lines to them may cross, pixels; null for none.</param>
    public MarkLabels(
        PlanView view,
        IReadOnlyList<PlanMark> marks,
        IEnumerable<LabelBox> soft,
        double sizePoints,
        IEnumerable<LabelBox>? hard = null,
        IEnumerable<LabelBox>? ground = null)
    {
        (this.view, this.marks, this.sizePoints) = (view, marks, sizePoints);
        using Lettering name = NameLettering(), figure = FigureLettering();
        double widest = WidestName(view);
        labelled = [.. marks.Where(m => m.Name.Length > 0).Select(m => m with { Name = name.Fitted(m.Name, widest) })];
        var requests = labelled.Select(m => new LabelRequest(
            view.PixelX(m.Place.X),
            view.PixelY(m.Place.Y),
            view.Points(m.FacingDegrees is null ? MarkShape.RadiusPoints + 1 : MarkShape.FacingPoints),
            name.WidthOf(m.Name) + (m.Figure.Length > 0 ? Space + figure.WidthOf(m.Figure) : 0) + (2 * PadX),
            figure.CapHeight + (2 * PadY)));
        IEnumerable<LabelBox> bare = marks.Where(m => m.Name.Length == 0).Select(m => BoxOf(view, m)).Concat(hard ?? []);
        var placer = new LabelPlacer(view.Frame.Grown(-view.Points(2)), bare, soft, view.Points(2), ground);
        places = placer.Place([.. requests]);
    }

    /// <summary>The width from which a name is cut short, because it would cover the plan it is about; pixels.</summary>
    public static double WidestName(PlanView view) =>
        Math.Min(0.6 * view.Frame.Width, Math.Max(0.4 * view.Frame.Width, view.Points(110)));

    /// <summary>All ground taken by marks and labels, pixels.</summary>
    public IEnumerable<LabelBox> Taken => places.Select(p => p.Box).Concat(marks.Select(m => BoxOf(view, m)));

    /// <summary>Ground that a mark itself takes, pixels.</summary>
    public static LabelBox BoxOf(PlanView view, PlanMark mark)
    {
        double reach = view.Points(MarkShape.RadiusPoints + 3);
        return LabelBox.Around(view.PixelX(mark.Place.X), view.PixelY(mark.Place.Y), reach, reach);
    }

    private double PadX => view.Points(3.5);

    private double PadY => view.Points(3);

    private double Space => view.Points(sizePoints * 0.45);

    public void Draw(SKCanvas canvas)
    {
        using Lettering name = NameLettering(), figure = FigureLettering();
        foreach ((PlanMark mark, PlacedLabel place) in labelled.Zip(places).Where(p => p.Second.HasLeader))
        {
            DrawLeader(canvas, view.Pixel(mark.Place), place.Box);
        }

        foreach (PlanMark mark in marks)
        {
            MarkShape.Draw(canvas, mark.Kind, view.Pixel(mark.Place), mark.FacingDegrees, view.PixelsPerPoint);
        }

        foreach ((PlanMark mark, PlacedLabel place) in labelled.Zip(places))
        {
            DrawLabel(canvas, mark, place.Box, name, figure);
        }
    }

    private void DrawLeader(SKCanvas canvas, SKPoint from, LabelBox box)
    {
        var to = new SKPoint(
            (float)Math.Clamp(from.X, box.Left + PadX, box.Right - PadX), (float)Math.Clamp(from.Y, box.Top, box.Bottom));
        using SKPaint casing = Pen.Line(Palette.Paper, view.Points(2.6));
        using SKPaint line = Pen.Line(Palette.Ink, view.Points(0.8));
        canvas.DrawLine(from, to, casing);
        canvas.DrawLine(from, to, line);
    }

    private void DrawLabel(SKCanvas canvas, PlanMark mark, LabelBox box, Lettering name, Lettering figure)
    {
        bool isSpot = mark.Kind is MarkKind.SpotHere or MarkKind.SpotElsewhere;
        bool isReversed = mark.Kind == MarkKind.SeatBelow;
        SKColor ink = isReversed ? Palette.Paper : isSpot ? Palette.Spot : Palette.Ink;
        using SKPaint ground = Pen.Fill(isReversed ? Palette.Ink : Palette.Paper.WithAlpha(235));
        using SKPaint rim = Pen.Line(isReversed ? Palette.Paper : isSpot ? Palette.Spot : Palette.Ink, view.Points(0.7));
        var rect = new SKRoundRect(
            new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom), (float)view.Points(1.5));
        canvas.DrawRoundRect(rect, ground);
        canvas.DrawRoundRect(rect, rim);
        double x = box.Left + PadX;
        name.WriteMiddle(canvas, mark.Name, x, box.CentreY, ink);
        figure.WriteMiddle(canvas, mark.Figure, box.Right - PadX, box.CentreY, ink, SKTextAlign.Right);
    }

    private Lettering NameLettering() => new(view.Points(sizePoints), isBold: false);

    private Lettering FigureLettering() => new(view.Points(sizePoints), isBold: true);
}
