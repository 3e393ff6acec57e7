using LinkMargin.Engine.Houses;

namespace LinkMargin.Reports.Houses;

/// <summary>The one required margin a map draws its heaviest line at.</summary>
internal static class RequiredMargin
{
    /// <summary>What most seats ask for, the larger of equals; the usual figure where there is no seat.</summary>
    public static double OfMost(House house) => house.Seats
        .GroupBy(seat => seat.RequiredDb)
        .OrderByDescending(group => group.Count())
        .ThenByDescending(group => group.Key)
        .Select(group => group.Key)
        .FirstOrDefault(Seat.UsualRequiredDb);
}
