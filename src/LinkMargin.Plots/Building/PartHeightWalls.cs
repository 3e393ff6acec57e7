using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Drawing;
using SkiaSharp;

namespace LinkMargin.Plots.Building;

/// <summary>Explains the outlines of walls that do not reach from floor to ceiling.</summary>
internal static class PartHeightWalls
{
    /// <summary>The key entry; none if every wall is full height.</summary>
    /// <param name="levels">The levels shown.</param>
    /// <param name="unit">The unit of heights.</param>
    /// <param name="isDashed">Whether such walls are drawn with a dashed rim.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static IEnumerable<KeyEntry> Entries(IEnumerable<Level> levels, LengthUnit unit, bool isDashed, double pixelsPerPoint)
    {
        (double From, double To)[] heights =
        [
            .. levels.SelectMany(level => level.Walls.Where(wall => !WallShape.ClosesStorey(level, wall)))
                .Select(wall => (wall.BaseMetres, wall.TopMetres)).Distinct().Order(),
        ];
        if (heights.Length == 0)
        {
            yield break;
        }

        double least = heights.Min(h => h.To), greatest = heights.Max(h => h.To);
        string tops = LengthTicks.WithUnit(least, unit) + (greatest > least ? $" to {LengthTicks.WithUnit(greatest, unit)}" : "");
        string words = heights.All(h => h.From == 0)
            ? $"wall {tops} high, open above"
            : $"part-height wall, top at {tops}";
        yield return new(20, words, (canvas, box) =>
        {
            var rect = new SKRect((float)box.Left, (float)(box.CentreY - (1.6 * pixelsPerPoint)), (float)box.Right, (float)(box.CentreY + (1.6 * pixelsPerPoint)));
            using SKPaint fill = Pen.Fill(Palette.Paper);
            using SKPaint rim = isDashed
                ? Pen.Dashed(Palette.Ink, 0.9 * pixelsPerPoint, 3 * pixelsPerPoint, 2 * pixelsPerPoint)
                : Pen.Line(Palette.Ink, 0.9 * pixelsPerPoint);
            canvas.DrawRect(rect, fill);
            canvas.DrawRect(rect, rim);
        });
    }
}
