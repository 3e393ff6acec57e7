using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Tests.Words;

/// <summary>How many seats pass, in words.</summary>
public sealed class SeatWordsTests
{
    [Theory]
    [InlineData(1, 1, "the seat passes")]
    [InlineData(0, 1, "the seat does not pass")]
    [InlineData(2, 2, "both seats pass")]
    [InlineData(1, 2, "1 of 2 seats pass")]
    [InlineData(3, 3, "all 3 seats pass")]
    [InlineData(5, 7, "5 of 7 seats pass")]
    public void It_reads_as_people_say_it(int passing, int seats, string words) => Assert.Equal(words, SeatWords.Passing(passing, seats));

    [Fact]
    public void Where_they_are_stands_behind_them() => Assert.Equal("both seats on level den pass", SeatWords.Passing(2, 2, " on level den"));
}
