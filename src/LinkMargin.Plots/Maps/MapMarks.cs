using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Drawing;
using LinkMargin.Plots.Marks;

namespace LinkMargin.Plots.Maps;

/// <summary>The marks of maps: spots and seats with what is written beside them.</summary>
internal static class MapMarks
{
    /// <summary>The spot of a map and the seats.</summary>
    /// <param name="house">The house.</param>
    /// <param name="field">The field of the spot.</param>
    /// <param name="seats">The seats on the field's level.</param>
    /// <param name="requiredDb">The map's required margin, dB.</param>
    /// <param name="hasSpotLabel">Whether the spot's name stands at its mark.</param>
    public static IEnumerable<PlanMark> OfSpot(House house, Field field, IReadOnlyList<SeatMark> seats, double requiredDb, bool hasSpotLabel)
    {
        Spot spot = field.Spot;
        bool isHere = spot.LevelIndex == field.LevelIndex;
        string name = isHere ? spot.Name : $"{spot.Name} (on level {house.Levels[spot.LevelIndex].Name})";
        yield return new(isHere ? MarkKind.SpotHere : MarkKind.SpotElsewhere, spot.Plan, hasSpotLabel ? name : "", "", null);
        foreach (SeatMark mark in seats)
        {
            MarkKind kind = mark.Passes ? MarkKind.SeatPasses : MarkKind.SeatBelow;
            yield return new(kind, mark.Seat.Plan, mark.Seat.Name, SeatFigure.Of(mark, requiredDb), mark.Seat.FacingDegrees);
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

/// <summary>What a map writes behind a seat's name.</summary>
internal static class SeatFigure
{
    /// <summary>
    /// The margin; and what the seat requires, where its answer would seem to contradict the hatch, which shows the
    /// map's own required margin.
    /// </summary>
    public static string Of(SeatMark mark, double requiredDb)
    {
        bool agreesWithHatch = mark.Passes == ((mark.MarginAtConfidenceDb ?? mark.MarginDb) >= requiredDb);
        string needs = agreesWithHatch ? "" : $" (needs {MarginText.AsWritten(mark.Seat.RequiredDb)})";
        return MarginText.WithUnit(mark.MarginDb, mark.Seat.RequiredDb) + needs;
    }
}
