using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Colours;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Maps;

/// <summary>
/// The seats shown by number on a sheet: those whose name, on some map, has no place that does not cover a wall, a mark or
/// another label. A seat has the same label on all maps.
/// </summary>
internal static class SheetNumbers
{
    private const double NumberPoints = 10;

    /// <summary>The seats, in the house's order; the first is number 1.</summary>
    /// <param name="request">The sheet.</param>
    /// <param name="viewOf">Gives the view of each map.</param>
    public static IReadOnlyList<Seat> Of(SheetRequest request, Func<SheetMap, PlanView> viewOf)
    {
        Seat[] seats = [.. request.House.Seats.Where(seat => request.Maps.Any(map => map.Seats.Any(mark => mark.Seat.Name == seat.Name)))];
        MapPanel panel = PanelOf(request, new MarginColours(request.Range, request.StepDb));
        HashSet<string> numbered = [];
        while (true)
        {
            Seat[] numbers = [.. seats.Where(seat => numbered.Contains(seat.Name))];
            string[] crowded =
            [
                .. request.Maps.Where(map => map.Seats.Count > 0)
                    .SelectMany(map => panel.LabelsOf(viewOf(map), map.Field.LevelIndex, MarksOf(request, map, numbers)).Crowded),
            ];
            int before = numbered.Count;
            numbered.UnionWith(crowded.Where(name => seats.Any(seat => seat.Name == name)));
            if (numbered.Count == before)
            {
                return numbers;
            }
        }
    }

    /// <summary>The marks of one map; its spot is named in the column heading.</summary>
    public static IReadOnlyList<PlanMark> MarksOf(SheetRequest request, SheetMap map, IReadOnlyList<Seat> numbers) =>
        [.. MapMarks.OfSpot(request.House, map.Field, map.Seats, hasSpotLabel: false, numbers)];

    /// <summary>The panel that draws the maps.</summary>
    public static MapPanel PanelOf(SheetRequest request, MarginColours colours) =>
        new(request.House, colours, request.RequiredDb, MapStyle.OnSheet);

    /// <summary>The key entries of the numbers.</summary>
    public static IEnumerable<KeyEntry> Entries(IReadOnlyList<Seat> numbers, double pixelsPerPoint) => numbers.Select((seat, i) => new KeyEntry(
        NumberPoints,
        $"{seat.Name}, requires {MarginText.AsWritten(seat.RequiredDb)} dB",
        (canvas, box) =>
        {
            using var lettering = new Lettering(NumberPoints * pixelsPerPoint, isBold: true);
            lettering.WriteMiddle(canvas, FormattableString.Invariant($"{i + 1}"), box.Right, box.CentreY, Palette.Ink, SkiaSharp.SKTextAlign.Right);
        }));
}
