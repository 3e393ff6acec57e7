using LinkMargin.Engine.Houses;
using LinkMargin.Reports.Houses;

namespace LinkMargin.Reports.Tests.Houses;

public sealed class RequiredMarginTests
{
    [Theory]
    [InlineData(new double[0], 15)]
    [InlineData(new double[] { 10 }, 10)]
    [InlineData(new double[] { 10, 20, 10 }, 10)]
    [InlineData(new double[] { 10, 20 }, 20)]
    public void The_heaviest_line_is_what_most_seats_ask_for(double[] required, double line)
    {
        Seat seat = SampleHouse.House.Seats[0];
        House house = SampleHouse.House with { Seats = [.. required.Select(db => seat with { RequiredDb = db })] };

        Assert.Equal(line, RequiredMargin.OfMost(house));
    }
}
