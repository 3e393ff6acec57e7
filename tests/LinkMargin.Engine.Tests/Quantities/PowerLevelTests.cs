using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Quantities;

public sealed class PowerLevelTests
{
    [Fact]
    public void Levels_and_ratios_add_and_part_as_they_should()
    {
        PowerLevel received = PowerLevel.FromDbm(4) + new Decibels(-2) - new Decibels(60);
        Assert.Equal(-58, received.Dbm);
        Assert.Equal(32, (received - PowerLevel.FromDbm(-90)).Db);
    }
}
