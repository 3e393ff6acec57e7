using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>One link through one wall, worked by hand.</summary>
public sealed class FirstBudgetTests
{
    private static readonly Material Stud = new("stud", 3.0, 1, "test");

    private static readonly Radio Console = new("console", PowerLevel.FromDbm(6), 0, PowerLevel.FromDbm(-88), 0, 0, "test");

    private static readonly Radio Controller = new("controller", PowerLevel.FromDbm(4), -2, PowerLevel.FromDbm(-90), 6, 0, "test");

    [Fact]
    public void Five_metres_and_one_wall_make_a_hand_worked_budget()
    {
        Spot spot = new("spot", 0, new Point2(0, 0), 1);
        Seat seat = new("seat", 0, new Point2(5, 0), 1, null, 15);
        Level level = new("one", 0, 2.4) { Walls = [new Wall("w", new Point2(2, -1), new Point2(2, 1), 0, 2.4, Stud)] };
        House house = new("h", [level], [], [spot], [seat], Console, Controller);

        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(house, ModelDepth.Direct), spot, seat);

        // Free space at 5 m: 54.039 dB at 2402 MHz, 54.316 dB at 2480 MHz; the band's mean lies between, near 54.175.
        Assert.InRange(budget.PathLossDb, 54.17 + 3, 54.18 + 3);
        // Half of the power for unlike polarisations: 10 lg 2 = 3.0103 dB.
        Assert.Equal(4 - 2 - 6 - 3.010299957 - budget.PathLossDb + 88, budget.Directions[0].MarginDb, 1e-8);
        Assert.Equal(6 - 2 - 6 - 3.010299957 - budget.PathLossDb + 90, budget.Directions[1].MarginDb, 1e-8);
        Assert.Equal(budget.Directions[0].MarginDb, budget.MarginDb);
        Crossing crossing = Assert.Single(budget.Paths[0].Path.Crossings);
        Assert.Equal("stud", crossing.Material.Name);
        Assert.Equal(0, crossing.IncidenceDegrees, 1e-6);
        Assert.Equal(2, crossing.DistanceMetres, 1e-9);
    }
}
