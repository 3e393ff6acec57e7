using System.Globalization;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Budgets worked by hand, at the one frequency they were worked for.</summary>
public sealed class BudgetReferenceTests
{
    private const double UpperFloorMetres = 2.8;
    private const double OverFloorMetres = 1;

    [Fact]
    public void Budgets_match_those_worked_by_hand()
    {
        Band band = new([Frequency.FromMegahertz(2440)]);
        foreach (ReferenceRow row in ReferenceTable.Read("budgets.csv").Rows)
        {
            House house = HouseOf(row);
            LinkBudget budget = LinkEvaluation.Budget(
                new LinkModel(SceneCompiler.Compile(house, band), ModelDepth.Direct), house.Spots[0], house.Seats[0]);
            Assert.Equal(row.Number("distance_m"), budget.DistanceMetres, 1e-9);
            row.AssertPrinted("path_loss_db", budget.PathLossDb);
            row.AssertPrinted("at_console_dbm", budget.Directions[0].ReceivedDbm);
            row.AssertPrinted("at_controller_dbm", budget.Directions[1].ReceivedDbm);
            row.AssertPrinted("margin_at_console_db", budget.Directions[0].MarginDb);
            row.AssertPrinted("margin_at_controller_db", budget.Directions[1].MarginDb);
            row.AssertPrinted("margin_db", budget.MarginDb);
        }
    }

    // The spot below at the origin; the seat east of it, on the upper level where the row names a floor. Walls stand in
    // the first half of the way, where the line is still under the ceiling.
    private static House HouseOf(ReferenceRow row)
    {
        string[][] obstacles = [.. row.Text("obstacles").Split(';', StringSplitOptions.RemoveEmptyEntries).Select(o => o.Split(' '))];
        double[] wallsDb = [.. obstacles.Where(o => o[0] == "wall").Select(LossDb)];
        double[] floorsDb = [.. obstacles.Where(o => o[0] == "floor").Select(LossDb)];
        Assert.Equal(obstacles.Length, wallsDb.Length + floorsDb.Length);

        double distance = row.Number("distance_m"), rise = floorsDb.Length > 0 ? UpperFloorMetres : 0;
        double run = Math.Sqrt((distance * distance) - (rise * rise));
        Level lower = new("lower", 0, SimpleHouse.HeightMetres)
        {
            Walls =
            [
                .. wallsDb.Select((lossDb, i) => (lossDb, X: run / 2 * (i + 1) / (wallsDb.Length + 1)))
                    .Select(w => SimpleHouse.FullWall("wall", new Point2(w.X, -1), new Point2(w.X, 1), w.lossDb)),
            ],
            Above = floorsDb.Length == 0 ? null : new FloorAbove(
                new FloorBuildUp(
                    "floor", [.. floorsDb.Select(lossDb => new FloorLayer(SimpleHouse.Material("floor", lossDb), 0.4, null))], "test"),
                null,
                []),
        };
        Level upper = new("upper", UpperFloorMetres, SimpleHouse.HeightMetres);
        double gainDb = row.Number("gains_db") / 2;
        return new House(
            row.Text("case"),
            [lower, upper],
            [],
            [new Spot("spot", 0, new Point2(0, 0), OverFloorMetres)],
            [new Seat("seat", rise > 0 ? 1 : 0, new Point2(run, 0), OverFloorMetres, null, 15)],
            RadioOf("console", row, gainDb, 0) with { GainIncludesMismatch = true }, // these were worked for aligned antennas
            RadioOf("controller", row, gainDb, row.Number("grip_db")));
    }

    private static Radio RadioOf(string end, ReferenceRow row, double gainDb, double gripDb) => new(
        end,
        PowerLevel.FromDbm(row.Number($"{end}_dbm")),
        gainDb,
        PowerLevel.FromDbm(row.Number($"{end}_needs_dbm")),
        gripDb,
        0,
        "test");

    private static double LossDb(string[] obstacle) => double.Parse(obstacle[1], CultureInfo.InvariantCulture);
}
