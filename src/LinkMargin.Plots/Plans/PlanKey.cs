using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using LinkMargin.Plots.Runs;
using SkiaSharp;

namespace LinkMargin.Plots.Plans;

/// <summary>The key of a plan; only symbols that occur.</summary>
internal static class PlanKey
{
    private const double NumberPoints = 9;
    private const double MostNamePoints = 180;

    public static IReadOnlyList<KeyEntry> Entries(
        PlanRequest request, MaterialPatterns patterns, double pixelsPerMetre, double pixelsPerPoint)
    {
        LengthUnit unit = request.Unit;
        Level[] levels = [.. request.Levels.Select(l => request.House.Levels[l])];
        var entries = new List<KeyEntry> { NorthArrow.For(pixelsPerPoint), ScaleBar.For(pixelsPerMetre, pixelsPerPoint, unit) };
        entries.AddRange(patterns.Entries(pixelsPerPoint, unit));
        entries.AddRange(PartHeightWalls.Entries(levels, unit, isDashed: true, pixelsPerPoint));
        entries.Add(Mark(MarkKind.SpotHere, "spot, with its height above the floor", pixelsPerPoint));
        entries.Add(request.Measurements.Count > 0
            ? Mark(MarkKind.Measurement, "place to measure at", pixelsPerPoint)
            : Mark(MarkKind.SeatPlain, "seat, with the height of the hands", pixelsPerPoint));
        if (levels.Any(l => l.Above is { Voids.Count: > 0 }))
        {
            entries.Add(new(20, "void in the floor here or above", (canvas, box) => DrawVoid(canvas, box, pixelsPerPoint)));
        }

        entries.AddRange(JoistLayer.Entries(levels, pixelsPerPoint));
        entries.AddRange(request.Runs.Count > 0 ? RunLayer.Entries(pixelsPerPoint) : []);
        return entries;
    }

    /// <summary>The names shown on the plan by number, and how many names have no place at all.</summary>
    /// <param name="names">The names with a number, or with no place.</param>
    /// <param name="shown">How many of the numbers are explained.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static IReadOnlyList<KeyEntry> Names(NumberedKey names, int shown, double pixelsPerPoint)
    {
        List<KeyEntry> entries = [.. names.Names.Take(shown).Select((name, i) => Numbered(i + 1, name, pixelsPerPoint))];
        if (shown < names.Names.Count)
        {
            entries.Add(Remark($"{names.Names.Count - shown} more numbers: too many for this picture"));
        }

        if (names.Unlabelled > 0)
        {
            entries.Add(Remark($"{names.Unlabelled} more have no label"));
        }

        return entries;
    }

    private static KeyEntry Remark(FormattableString text) => new(0, FormattableString.Invariant(text), (_, _) => { });

    private static KeyEntry Numbered(int number, string name, double pixelsPerPoint)
    {
        string written = FormattableString.Invariant($"{number}");
        using var measure = new Lettering(NumberPoints * pixelsPerPoint, isBold: true);
        return new(measure.WidthOf("000") / pixelsPerPoint, measure.Fitted(name, MostNamePoints * pixelsPerPoint), (canvas, box) =>
        {
            using var lettering = new Lettering(NumberPoints * pixelsPerPoint, isBold: true);
            lettering.WriteMiddle(canvas, written, box.Right, box.CentreY, Palette.Ink, SKTextAlign.Right);
        });
    }

    private static KeyEntry Mark(MarkKind kind, string text, double pixelsPerPoint) =>
        new(
            11,
            text,
            (canvas, box) => MarkShape.Draw(canvas, kind, new((float)box.CentreX, (float)box.CentreY), null, pixelsPerPoint));

    private static void DrawVoid(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        var view = new PlanView(box, new(0, 0), 1, pixelsPerPoint);
        VoidLayer.DrawOne(
            canvas,
            view,
            new Polygon([new(0, 0), new(box.Width, 0), new(box.Width, box.Height), new(0, box.Height)]),
            dashPoints: 2);
    }
}
