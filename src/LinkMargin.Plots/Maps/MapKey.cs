using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Plots.Building;
using LinkMargin.Plots.Contours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Labels;
using LinkMargin.Plots.Marks;
using SkiaSharp;

namespace LinkMargin.Plots.Maps;

/// <summary>The key of a map.</summary>
internal static class MapKey
{
    private const double LabelPoints = 13;
    private const int MostNamedSeats = 4;

    /// <summary>The entries.</summary>
    /// <param name="content">What is shown.</param>
    /// <param name="pixelsPerMetre">Scale.</param>
    /// <param name="pixelsPerPoint">Pixels for a typographic point.</param>
    public static IReadOnlyList<KeyEntry> Entries(MapContent content, double pixelsPerMetre, double pixelsPerPoint)
    {
        string required = $"{MarginText.Bare(content.RequiredDb)} dB", counted = content.IsHatchedByAnother ? " to count on" : "";
        return
        [
            NorthArrow.For(pixelsPerPoint),
            ScaleBar.For(pixelsPerMetre, pixelsPerPoint, content.Unit),
            Mark(MarkKind.SpotHere, "spot", pixelsPerPoint),
            .. content.HasSpotElsewhere ? [Mark(MarkKind.SpotElsewhere, "spot on another level", pixelsPerPoint)] : Array.Empty<KeyEntry>(),
            .. content.Seats.Count == 0 ? [] : Seats(content, pixelsPerPoint),
            new(20, $"below {required}{counted}{(content.AlsoRequiredDb.Count > 0 ? ", which most seats require" : ", the required margin")}", (canvas, box) => DrawHatch(canvas, box, pixelsPerPoint)),
            .. content.AlsoRequiredDb.Count > 0 ? [new KeyEntry(24, Others(content), (canvas, box) => DrawLine(canvas, box, pixelsPerPoint))] : Array.Empty<KeyEntry>(),
            .. PartHeightWalls.Entries(content.Levels, content.Unit, isDashed: false, pixelsPerPoint),
            .. content.Fills ? [new KeyEntry(14, "fixture that fills the space at this height", (canvas, box) => DrawFixture(canvas, box, pixelsPerPoint))] : Array.Empty<KeyEntry>(),
        ];
    }

    private static IEnumerable<KeyEntry> Seats(MapContent content, double pixelsPerPoint)
    {
        string figure = content.IsHatchedByAnother
            ? "seats' figures: medians, and what each seat requires"
            : "seats' figures: margin to count on against what the seat requires";
        yield return new(11 + LabelPoints, "seat passes", (canvas, box) => DrawSeat(canvas, box, passes: true, pixelsPerPoint));
        yield return new(11 + LabelPoints, "seat does not pass", (canvas, box) => DrawSeat(canvas, box, passes: false, pixelsPerPoint));
        yield return new(0, figure, (_, _) => { });
    }

    // Lists the seats behind each dashed line.
    private static string Others(MapContent content)
    {
        Seat[] others = [.. content.Seats.Where(seat => seat.RequiredDb != content.RequiredDb).DistinctBy(seat => seat.Name)];
        return others.Length > MostNamedSeats
            ? $"required by other seats: {string.Join(", ", content.AlsoRequiredDb.Select(MarginText.AsWritten))} dB"
            : string.Join("; ", others.GroupBy(seat => seat.RequiredDb).OrderByDescending(group => group.Key).Select(group =>
                $"{MarginText.AsWritten(group.Key)} dB, required by {string.Join(", ", group.Select(seat => seat.Name))}"));
    }

    private static void DrawSeat(SKCanvas canvas, LabelBox box, bool passes, double pixelsPerPoint)
    {
        double disc = box.Left + (5 * pixelsPerPoint), half = 5.5 * pixelsPerPoint, sign = 6.5 * pixelsPerPoint;
        MarkShape.Draw(canvas, passes ? MarkKind.SeatPasses : MarkKind.SeatBelow, new((float)disc, (float)box.CentreY), null, pixelsPerPoint);
        var label = new LabelBox(box.Right - (LabelPoints * pixelsPerPoint), box.CentreY - half, box.Right, box.CentreY + half);
        LabelLetters.DrawGround(canvas, label, isSpot: false, isReversed: !passes, pixelsPerPoint);
        PassSign.Draw(canvas, passes, label.CentreX - (sign / 2), label.CentreY, sign, passes ? Palette.Ink : Palette.Paper);
    }

    private static void DrawLine(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        using SKPaint line = RequiredLine.Ink(pixelsPerPoint, isDashed: true);
        canvas.DrawLine((float)box.Left, (float)box.CentreY, (float)box.Right, (float)box.CentreY, line);
    }

    private static void DrawFixture(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        using SKPaint fill = Pen.Fill(Palette.Paper), rim = Pen.Line(Palette.Ink, 0.9 * pixelsPerPoint);
        var rect = new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom);
        canvas.DrawRect(rect, fill);
        canvas.DrawRect(rect, rim);
    }

    /// <summary>A mark and its meaning.</summary>
    public static KeyEntry Mark(MarkKind kind, string text, double pixelsPerPoint) =>
        new(
            11,
            text,
            (canvas, box) => MarkShape.Draw(canvas, kind, new((float)box.CentreX, (float)box.CentreY), null, pixelsPerPoint));

    /// <summary>A sample of the hatching.</summary>
    public static void DrawHatch(SKCanvas canvas, LabelBox box, double pixelsPerPoint)
    {
        var rect = new SKRect((float)box.Left, (float)box.Top, (float)box.Right, (float)box.Bottom);
        canvas.Save();
        canvas.ClipRect(rect);
        using var strokes = new SKPath();
        double shift = FieldLayer.HatchSpacingPoints * Math.Sqrt(2) * pixelsPerPoint;
        for (double x = box.Left - box.Height; x < box.Right; x += shift)
        {
            strokes.MoveTo((float)x, (float)box.Bottom);
            strokes.LineTo((float)(x + box.Height), (float)box.Top);
        }

        FieldLayer.DrawHatch(canvas, strokes, pixelsPerPoint);
        canvas.Restore();
        using SKPaint rim = Pen.Line(Palette.SoftInk, 0.6 * pixelsPerPoint);
        canvas.DrawRect(rect, rim);
    }
}

/// <summary>What a map or a sheet of maps shows, as needed for its key.</summary>
/// <param name="Levels">The levels.</param>
/// <param name="Seats">The seats.</param>
/// <param name="RequiredDb">The margin of the boldest line, dB.</param>
/// <param name="Unit">The unit of lengths.</param>
internal sealed record MapContent(IReadOnlyList<Level> Levels, IReadOnlyList<Seat> Seats, double RequiredDb, LengthUnit Unit)
{
    /// <summary>Whether hatching depends on another margin than the one shown.</summary>
    public bool IsHatchedByAnother { get; init; }

    /// <summary>Whether a spot on another level is drawn.</summary>
    public bool HasSpotElsewhere { get; init; }

    /// <summary>Whether a fixture is solid at the height of the hands.</summary>
    public bool Fills { get; init; }

    /// <summary>Margins that only some seats require, dB, rising.</summary>
    public IReadOnlyList<double> AlsoRequiredDb => RequiredMargins.Others(Seats, RequiredDb);

    /// <summary>The content of some fields with the seats on them.</summary>
    public static MapContent Of(House house, IReadOnlyList<Field> fields, IEnumerable<SeatMark> seats, double requiredDb, LengthUnit unit) => new(
        [.. fields.Select(field => field.LevelIndex).Distinct().Order().Select(level => house.Levels[level])],
        [.. seats.Select(mark => mark.Seat).DistinctBy(seat => seat.Name)],
        requiredDb,
        unit)
    {
        HasSpotElsewhere = fields.Any(field => field.Spot.LevelIndex != field.LevelIndex),
        Fills = fields.Any(field => FieldGround.FilledAt(house.Fixtures.Where(f => f.LevelIndex == field.LevelIndex), field.HandsMetres).Count > 0),
    };
}

/// <summary>Required margins other than that of the boldest line.</summary>
internal static class RequiredMargins
{
    /// <summary>The other margins, dB, rising.</summary>
    public static IReadOnlyList<double> Others(IEnumerable<Seat> seats, double requiredDb) =>
        [.. seats.Select(seat => seat.RequiredDb).Where(required => required != requiredDb).Distinct().Order()];
}
