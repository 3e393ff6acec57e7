using LinkMargin.Engine.Houses;

namespace LinkMargin.Reports.Houses;

/// <summary>The one required margin a map draws its heaviest line at.</summary>
internal static class RequiredMargin
{
    /// <summary>What most seats require, the larger of equals; the usual figure without seats.</summary>
    public static double OfMost(House house) => house.Seats
        .GroupBy(seat => seat.RequiredDb)
        .OrderByDescending(group => group.Count())
        .ThenByDescending(group => group.Key)
        .Select(group => group.Key)
        .FirstOrDefault(Seat.UsualRequiredDb);
}
