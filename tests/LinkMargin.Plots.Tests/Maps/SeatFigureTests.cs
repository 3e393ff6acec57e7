using LinkMargin.Engine.Houses;
using LinkMargin.Plots.Maps;

namespace LinkMargin.Plots.Tests.Maps;

public class SeatFigureTests
{
    [Theory]
    [InlineData(17.8, 15, "17.8 ≥ 15 dB")]
    [InlineData(12, 15, "12.0 < 15 dB")]
    [InlineData(17.8, 20, "17.8 < 20 dB")]
    [InlineData(12, 10, "12.0 ≥ 10 dB")]
    [InlineData(15, 15, "15.0 ≥ 15 dB")]
    [InlineData(14.99, 15, "14.9 < 15 dB")]
    [InlineData(16.26, 16.25, "16.26 ≥ 16.25 dB")]
    [InlineData(16.24, 16.25, "16.2 < 16.25 dB")]
    [InlineData(-1.04, 15, "−1.1 < 15 dB")]
    public void A_seat_says_its_margin_against_what_it_requires_itself(double marginDb, double seatRequiredDb, string expected)
    {
        Assert.Equal(expected, SeatFigure.Of(new SeatMark(SeatOf(seatRequiredDb), marginDb, marginDb >= seatRequiredDb)));
    }

    // A median above what is required does not mean that the seat passes.
    [Theory]
    [InlineData(12, "17.8 dB (requires 15)")]
    [InlineData(16, "17.8 dB (requires 15)")]
    [InlineData(17.8, "17.8 ≥ 15 dB")]
    public void A_margin_that_does_not_decide_is_not_compared(double marginAtConfidenceDb, string expected)
    {
        var mark = new SeatMark(SeatOf(15), 17.8, marginAtConfidenceDb >= 15) { MarginAtConfidenceDb = marginAtConfidenceDb };
        Assert.Equal(expected, SeatFigure.Of(mark));
    }

    private static Seat SeatOf(double requiredDb) => new("sofa", 0, new(0, 0), 0.7, null, requiredDb);
}
