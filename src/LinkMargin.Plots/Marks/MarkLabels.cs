using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using SkiaSharp;

namespace LinkMargin.Plots.Marks;

/// <summary>The labels of a plan's marks, each with the place found for it.</summary>
internal sealed class MarkLabels
{
    private readonly IReadOnlyList<PlanMark> marks;
    private readonly List<(PlanMark Mark, PlacedLabel Place)> labels = [];
    private readonly PlanView view;
    private readonly double sizePoints;

    /// <summary>Finds places for the labels of some marks.</summary>
    /// <param name="view">The view.</param>
    /// <param name="marks">The marks.</param>
    /// <param name="soft">Ground that labels had better not cover, pixels.</param>
    /// <param name="sizePoints">Size of letters, points.</param>
    /// <param name="hard">Ground that labels may not cover, pixels; null for none.</param>
    /// <param name="ground">Ground that labels may not cover but lines to them may cross, pixels; null for none.</param>
    /// <param name="key">
    /// Takes the names that find no free place near their mark; null where each is to be written, free place or not.
    /// </param>
    public MarkLabels(
        PlanView view,
        IReadOnlyList<PlanMark> marks,
        IEnumerable<LabelBox> soft,
        double sizePoints,
        IEnumerable<LabelBox>? hard = null,
        IEnumerable<LabelBox>? ground = null,
        NumberedKey? key = null)
    {
        (this.view, this.marks, this.sizePoints) = (view, marks, sizePoints);
        using Lettering name = NameLettering(), figure = FigureLettering();
        double widest = WidestName(view);
        PlanMark[] labelled = [.. marks.Where(m => m.Name.Length > 0)];
        string[] texts = [.. labelled.Select(m => name.Fitted(m.Name, widest))];
        LabelBox[] bare = [.. marks.Where(m => m.Name.Length == 0).Select(m => BoxOf(view, m)), .. hard ?? []];
        LabelPlacer Placer() => new(view.Frame.Grown(-view.Points(2)), bare, soft, view.Points(2), ground);
        LabelRequest RequestFor(int i, string text) => new(
            view.PixelX(labelled[i].Place.X),
            view.PixelY(labelled[i].Place.Y),
            view.Points(labelled[i].FacingDegrees is null ? MarkShape.RadiusPoints + 1 : MarkShape.FacingPoints),
            name.WidthOf(text) + (labelled[i].Figure.Length > 0 ? Space + figure.WidthOf(labelled[i].Figure) : 0) + (2 * PadX),
            figure.CapHeight + (2 * PadY));

        IReadOnlyList<(string Text, PlacedLabel Place)?> placed = key is not null
            ? key.Place(texts, RequestFor, Placer)
            : [.. texts.Zip(Placer().Place([.. texts.Select((t, i) => RequestFor(i, t))])).Select(p => ((string, PlacedLabel)?)p)];
        for (int i = 0; i < labelled.Length; i++)
        {
            if (placed[i] is (string text, PlacedLabel place))
            {
                labels.Add((labelled[i] with { Name = text }, place));
            }
        }
    }

    /// <summary>The width from which a name is cut short, because it would cover the plan it is about; pixels.</summary>
    public static double WidestName(PlanView view) =>
        Math.Min(0.6 * view.Frame.Width, Math.Max(0.4 * view.Frame.Width, view.Points(110)));

    /// <summary>Ground taken by labels alone, pixels.</summary>
    public IEnumerable<LabelBox> Written => labels.Select(l => l.Place.Box);

    /// <summary>All ground taken by marks and labels, pixels.</summary>
    public IEnumerable<LabelBox> Taken => Written.Concat(marks.Select(m => BoxOf(view, m)));

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
        foreach ((PlanMark mark, PlacedLabel place) in labels.Where(l => l.Place.HasLeader))
        {
            DrawLeader(canvas, view.Pixel(mark.Place), place.Box);
        }

        foreach (PlanMark mark in marks)
        {
            MarkShape.Draw(canvas, mark.Kind, view.Pixel(mark.Place), mark.FacingDegrees, view.PixelsPerPoint);
        }

        foreach ((PlanMark mark, PlacedLabel place) in labels)
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

/// <summary>Seats and spots with their labels, on top of everything.</summary>
internal sealed class MarkLayer(PlanView view, MarkLabels labels) : PlanLayer(view)
{
    protected override void Draw(SKCanvas canvas) => labels.Draw(canvas);
}
