using System.Globalization;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Maps;
using LinkMargin.Reports.Layout;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Pictures;

/// <summary>The findings of maps, for their titles and verdicts.</summary>
internal static class MapFindings
{
    /// <summary>The finding of one spot's map: the seats of its level, and how much of the floor would pass.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="level">The level's name.</param>
    /// <param name="seats">The seats on it.</param>
    /// <param name="floor">The margins to count on over the floor; null if none was computed.</param>
    /// <param name="requiredDb">The margin of the boldest line, dB.</param>
    public static string OfMap(Spot spot, string level, IReadOnlyCollection<SeatMark> seats, FieldSummary? floor, double requiredDb)
    {
        int passing = seats.Count(mark => mark.Passes);
        string found = seats.Count == 0 ? $"no seat on level {level}" : SeatWords.Passing(passing, seats.Count, $" on level {level}");
        string share = floor is null
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $", {100 * floor.SharePassing:0} % of its floor has {Figures.Plain(requiredDb)} dB or more");
        return $"{Capital(spot.Name)}: {found}{share}";
    }

    /// <summary>The finding over all spots: the best one.</summary>
    /// <param name="ranking">The spots, at least one.</param>
    /// <param name="isOfAll">Whether these are all spots of the house.</param>
    public static string OfSpots(Ranking ranking, bool isOfAll)
    {
        SpotScore best = ranking.Scores[0];
        string others = isOfAll && ranking.Scores.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $", the best of {ranking.Scores.Count} spots") : "";
        return $"{Capital(best.Spot.Name)}{others}: {SeatWords.Passing(best)}";
    }

    /// <summary>The seat that decides, and by how much.</summary>
    public static string Weakest(SpotScore score) => $"weakest: {score.Weakest.Seat.Name}, {Headroom.Words(score)} required";

    /// <summary>A name at the start of a title, with a capital letter if possible.</summary>
    public static string Capital(string name) => name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];
}
