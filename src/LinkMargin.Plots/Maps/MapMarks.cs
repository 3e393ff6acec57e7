using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Maps;

/// <summary>The marks of maps: spots and seats with their labels.</summary>
internal static class MapMarks
{
    /// <summary>The marks of a map's spot and of the seats.</summary>
    /// <param name="house">The house.</param>
    /// <param name="field">The field of the spot.</param>
    /// <param name="seats">The seats on the field's level.</param>
    /// <param name="hasSpotLabel">Whether the spot's name is at its mark.</param>
    /// <param name="numbers">The seats shown by number; null for none.</param>
    public static IEnumerable<PlanMark> OfSpot(
        House house, Field field, IReadOnlyList<SeatMark> seats, bool hasSpotLabel, IReadOnlyList<SeatNumber>? numbers = null)
    {
        Spot spot = field.Spot;
        bool isHere = spot.LevelIndex == field.LevelIndex;
        string name = isHere ? spot.Name : $"{spot.Name} (on level {house.Levels[spot.LevelIndex].Name})";
        yield return new(isHere ? MarkKind.SpotHere : MarkKind.SpotElsewhere, spot.Plan, hasSpotLabel ? name : "", "", null);
        foreach (SeatMark mark in seats)
        {
            MarkKind kind = mark.Passes ? MarkKind.SeatPasses : MarkKind.SeatBelow;
            int number = numbers?.FirstOrDefault(one => one.Seat.Name == mark.Seat.Name).Number ?? 0;
            yield return new(
                kind,
                mark.Seat.Plan,
                number > 0 ? FormattableString.Invariant($"{number}") : mark.Seat.Name,
                number > 0 ? SeatFigure.Short(mark) : SeatFigure.Of(mark),
                mark.Seat.FacingDegrees)
            {
                IsNumbered = number > 0,
            };
        }
    }

    /// <summary>The places for a console on a level, and its seats.</summary>
    public static IEnumerable<PlanMark> OfChoice(House house, int levelIndex, IEnumerable<ChoiceMark> places)
    {
        foreach (ChoiceMark place in places.Where(place => place.LevelIndex == levelIndex))
        {
            MarkKind kind = place.IsNamed ? MarkKind.SpotElsewhere : MarkKind.SpotHere;
            yield return new(kind, place.Plan, place.Name, $"{MarginText.WithSign(place.Figure)} dB", null);
        }

        foreach (Seat seat in house.Seats.Where(s => s.LevelIndex == levelIndex))
        {
            yield return new(MarkKind.SeatPlain, seat.Plan, seat.Name, "", seat.FacingDegrees);
        }
    }
}

/// <summary>The text below a seat's name on a map.</summary>
internal static class SeatFigure
{
    /// <summary>
    /// The margin to count on and the seat's required margin; if the map shows another margin than the one that decides, both
    /// numbers without a comparison.
    /// </summary>
    public static string Of(SeatMark mark)
    {
        double required = mark.Seat.RequiredDb;
        string margin = MarginText.WithSign(ShownMargin.Text(mark.MarginDb, required)), needed = MarginText.AsWritten(required);
        bool decides = mark.MarginAtConfidenceDb is null || mark.MarginAtConfidenceDb == mark.MarginDb;
        return decides
            ? $"{margin} {(mark.Passes ? "≥" : "<")} {needed} dB"
            : $"{margin} dB (requires {needed})";
    }

    /// <summary>Only the margin, for a seat whose required margin is in the key.</summary>
    public static string Short(SeatMark mark) => MarginText.WithSign(ShownMargin.Text(mark.MarginDb, mark.Seat.RequiredDb));
}
