using CsCheck;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>A link's paths add up by their powers, so one more path never lowers the level.</summary>
public sealed class PowerSumTests
{
    [Theory, Law]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void A_path_loss_is_the_sum_of_the_powers_of_the_paths_listed(ModelDepth depth) =>
        RandomHouse.Any.ForAll(
            house =>
            {
                foreach (LinkBudget budget in BudgetsOf(house, depth))
                {
                    // A path listed at the greatest loss that is told may have lost more.
                    double[] reported = [.. budget.Paths.Select(path => path.LossDb).Where(db => db < PathLoss.GreatestDb)];
                    double most = Math.Min(PathLoss.GreatestDb, LossOfAllDb([.. budget.Paths.Select(path => path.LossDb)]));
                    double least = reported.Length == 0 ? PathLoss.GreatestDb : LossOfAllDb(reported);
                    Assert.InRange(budget.PathLossDb, most - LineLoss.SameDb, least + LineLoss.SameDb);
                    Assert.True(budget.PathLossDb <= budget.Paths.Min(path => path.LossDb) + LineLoss.SameDb);
                    Assert.Equal(budget.Paths.OrderBy(path => path.LossDb), budget.Paths);
                }
            },
            cases: 50);

    private static double LossOfAllDb(double[] lossesDb) =>
        -Decibels.FromPowerRatio(lossesDb.Sum(db => Decibels.ToPowerRatio(-db)));

    private static IEnumerable<LinkBudget> BudgetsOf(Engine.Houses.House house, ModelDepth depth)
    {
        var model = new LinkModel(house, depth);
        return house.Spots.SelectMany(spot => LinkEvaluation.Budgets(model, spot, house.Seats));
    }
}
