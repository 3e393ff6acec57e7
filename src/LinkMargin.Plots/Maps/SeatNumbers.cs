using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Maps;

/// <summary>A seat that a map shows by number instead of by name.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Seat">The seat.</param>
internal readonly record struct SeatNumber(int Number, Seat Seat);

/// <summary>
/// The seats shown by number on a map or a sheet of maps: those whose name, on some map, has no place that does not cover a wall, a mark or
/// another label. A seat has the same label on all maps of a sheet.
/// </summary>
internal static class SeatNumbers
{
    private const double NumberPoints = 10;

    /// <summary>The seats, by number.</summary>
    /// <param name="request">The sheet.</param>
    /// <param name="viewOf">Gives the view of each map.</param>
    public static IReadOnlyList<SeatNumber> Of(SheetRequest request, Func<SheetMap, PlanView> viewOf)
    {
        MapPanel panel = PanelOf(request, new MarginColours(request.Range, request.StepDb));
        Seat[] shown = [.. request.House.Seats.Where(seat => request.Maps.Any(map => map.Seats.Any(mark => mark.Seat.Name == seat.Name)))];
        return Of(
            shown,
            numbers => request.Maps.Where(map => map.Seats.Count > 0)
                .SelectMany(map => panel.LabelsOf(viewOf(map), map.Field.LevelIndex, MarksOf(request, map, numbers)).Crowded),
            request.SeatsByNumber);
    }

    /// <summary>The same for any maps.</summary>
    /// <param name="seats">The seats on them, in the house's order.</param>
    /// <param name="crowded">The names that find no room where some seats are numbers already.</param>
    /// <param name="byNumber">The seats in the order of the numbers they have elsewhere in a document; null for numbers without gaps.</param>
    public static IReadOnlyList<SeatNumber> Of(
        IReadOnlyList<Seat> seats, Func<IReadOnlyList<SeatNumber>, IEnumerable<string>> crowded, IReadOnlyList<Seat>? byNumber = null)
    {
        HashSet<string> numbered = [];
        while (true)
        {
            SeatNumber[] numbers =
            [
                .. (byNumber ?? [.. seats.Where(seat => numbered.Contains(seat.Name))]).Select((seat, i) => new SeatNumber(i + 1, seat))
                    .Where(one => numbered.Contains(one.Seat.Name)),
            ];
            int before = numbered.Count;
            numbered.UnionWith(crowded(numbers).Where(name => seats.Any(seat => seat.Name == name)));
            if (numbered.Count == before)
            {
                return numbers;
            }
        }
    }

    /// <summary>The marks of one map; its spot is named in the column heading.</summary>
    public static IReadOnlyList<PlanMark> MarksOf(SheetRequest request, SheetMap map, IReadOnlyList<SeatNumber> numbers) =>
        [.. MapMarks.OfSpot(request.House, map.Field, map.Seats, hasSpotLabel: false, numbers)];

    /// <summary>The panel that draws the maps.</summary>
    public static MapPanel PanelOf(SheetRequest request, MarginColours colours) =>
        new(request.House, colours, request.RequiredDb, MapStyle.OnSheet.Scaled(request.LetterShare));

    /// <summary>The key entries of the numbers.</summary>
    public static IEnumerable<KeyEntry> Entries(IReadOnlyList<SeatNumber> numbers, double pixelsPerPoint) => numbers.Select(one => new KeyEntry(
        NumberPoints,
        $"{one.Seat.Name}, requires {MarginText.AsWritten(one.Seat.RequiredDb)} dB",
        (canvas, box) =>
        {
            using var lettering = new Lettering(NumberPoints * pixelsPerPoint, isBold: true);
            lettering.WriteMiddle(canvas, FormattableString.Invariant($"{one.Number}"), box.Right, box.CentreY, Palette.Ink, SkiaSharp.SKTextAlign.Right);
        }));
}
