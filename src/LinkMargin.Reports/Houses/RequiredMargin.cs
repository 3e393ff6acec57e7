using LinkMargin.Engine.Houses;

namespace LinkMargin.Reports.Houses;

/// <summary>The required margin at which a map draws its boldest line.</summary>
internal static class RequiredMargin
{
    /// <summary>The margin that most seats require, the larger one in a tie; the default for a house without seats.</summary>
    public static double OfMost(House house) => house.Seats
        .GroupBy(seat => seat.RequiredDb)
        .OrderByDescending(group => group.Count())
        .ThenByDescending(group => group.Key)
        .Select(group => group.Key)
        .FirstOrDefault(Seat.UsualRequiredDb);
}
