using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Maps;

namespace LinkMargin.Plots.Tests.Maps;

public class SeatFigureTests
{
    // The map hatches below 15 dB in each case.
    [Theory]
    [InlineData(17.8, 15, "17.8 dB")]
    [InlineData(12, 15, "12.0 dB")]
    [InlineData(17.8, 20, "17.8 dB (needs 20)")]
    [InlineData(12, 20, "12.0 dB")]
    [InlineData(12, 10, "12.0 dB (needs 10)")]
    [InlineData(17.8, 10, "17.8 dB")]
    [InlineData(15, 15, "15.0 dB")]
    [InlineData(14.99, 15, "14.9 dB")]
    [InlineData(16.26, 16.25, "16.26 dB")]
    [InlineData(16.24, 16.25, "16.2 dB (needs 16.25)")]
    public void A_seat_says_what_it_needs_only_where_it_would_contradict_the_hatch(
        double marginDb, double seatRequiredDb, string expected)
    {
        var seat = new Seat("sofa", 0, new(0, 0), 0.7, null, seatRequiredDb);
        Assert.Equal(expected, SeatFigure.Of(new SeatMark(seat, marginDb, marginDb >= seatRequiredDb), 15));
    }

    [Theory]
    [InlineData(12, false, "17.8 dB")]
    [InlineData(12, true, "17.8 dB (needs 10)")]
    public void Where_another_margin_is_hatched_by_that_one_is_held_against_the_hatch(double marginAtConfidenceDb, bool meets, string expected)
    {
        var seat = new Seat("sofa", 0, new(0, 0), 0.7, null, 10);
        Assert.Equal(expected, SeatFigure.Of(new SeatMark(seat, 17.8, meets) { MarginAtConfidenceDb = marginAtConfidenceDb }, 15));
    }
}
