using System.Globalization;
using LinkMargin.Engine.Decisions;

namespace LinkMargin.Reports.Words;

/// <summary>How many seats pass, in words.</summary>
internal static class SeatWords
{
    /// <summary><c>5 of 7 seats pass</c>.</summary>
    public static string Passing(SpotScore score) => Passing(score.SeatsPassing, score.Seats);

    /// <summary><c>5 of 7 seats pass</c>, <c>both seats pass</c>, <c>the seat passes</c>.</summary>
    /// <param name="passing">How many pass.</param>
    /// <param name="seats">Of how many, at least one.</param>
    /// <param name="where">Where these are, with a space before it; empty for nothing.</param>
    public static string Passing(int passing, int seats, string where = "") => (seats, passing == seats) switch
    {
        (1, true) => $"the seat{where} passes",
        (1, false) => $"the seat{where} does not pass",
        (2, true) => $"both seats{where} pass",
        (_, true) => string.Create(CultureInfo.InvariantCulture, $"all {seats} seats{where} pass"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{passing} of {seats} seats{where} pass"),
    };
}
