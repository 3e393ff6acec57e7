using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>What holds for every straight line in every house.</summary>
public sealed class LinkLawTests
{
    private const int Houses = 200;

    private static readonly Gen<(House House, Line[] Lines)> HouseAndLines =
        from house in RandomHouse.Any
        from lines in RandomLine.In(house).Array[20]
        select (house, lines);

    [Fact, Law]
    public void Exchanging_the_ends_of_a_path_changes_nothing() =>
        HouseAndLines.ForAll(
            (house, lines) =>
            {
                var scene = Scene.Compile(house);
                Assert.All(lines, line => LineLoss.AreTheSame(scene, line, scene, line.Reversed));
            },
            cases: Houses);

    [Fact, Law]
    public void Moving_turning_or_mirroring_a_house_changes_no_path() =>
        Gen.Select(HouseAndLines, HouseMotion.Any).ForAll(
            (drawn, motion) =>
            {
                Scene here = Scene.Compile(drawn.House), there = Scene.Compile(motion.Of(drawn.House));
                Assert.All(drawn.Lines, line => LineLoss.AreTheSame(here, line, there, motion.Of(line)));
            },
            cases: Houses);

    [Fact, Law]
    public void Moving_turning_or_mirroring_a_house_changes_no_margin() =>
        Gen.Select(RandomHouse.Any, HouseMotion.Any).ForAll(
            (house, motion) =>
            {
                LinkBudget[][] here = DirectLinks.Budgets(Scene.Compile(house));
                LinkBudget[][] there = DirectLinks.Budgets(Scene.Compile(motion.Of(house)));
                Assert.Equal(house.Seats.Count, here.Length);
                foreach ((LinkBudget a, LinkBudget b) in here.SelectMany(row => row).Zip(there.SelectMany(row => row)))
                {
                    Assert.Equal(a.MarginDb, b.MarginDb, LineLoss.ToleranceDb(a.Paths[0].Path));
                }
            },
            cases: Houses);

    [Fact, Law]
    public void A_house_whose_every_loss_is_zero_is_free_space() =>
        HouseAndLines.ForAll(
            (house, lines) =>
            {
                var scene = Scene.Compile(HouseMaterials.Replace(house, material => material with { LossDb = 0 }));
                Assert.All(lines, line => Assert.Equal(
                    FreeSpaceLoss.Db(line.From.DistanceTo(line.To), scene.Band.Equivalent),
                    LineLoss.Of(scene, line),
                    LineLoss.SameDb));
            },
            cases: Houses);

    [Fact, Law]
    public void The_list_of_crossings_and_the_sum_without_it_agree_bit_for_bit() =>
        RandomHouse.Any.ForAll(
            house =>
            {
                var scene = Scene.Compile(house);
                foreach (LinkBudget budget in DirectLinks.Budgets(scene).SelectMany(row => row))
                {
                    TracedPath path = Assert.Single(budget.Paths).Path;
                    Assert.Equal(Math.Min(PathLoss.GreatestDb, LineLoss.Of(scene, new Line(path.Points[0], path.Points[^1]))), budget.PathLossDb);
                    Assert.Equal(path.Crossings.OrderBy(c => c.DistanceMetres), path.Crossings);
                }
            },
            cases: Houses);

    [Fact, Law]
    public void A_margin_is_that_of_the_worse_direction_and_both_lose_the_same() =>
        RandomHouse.Any.ForAll(
            house =>
            {
                foreach (LinkBudget budget in DirectLinks.Budgets(Scene.Compile(house)).SelectMany(row => row))
                {
                    Assert.Equal(2, budget.Directions.Count);
                    Assert.Equal(budget.Directions.Min(d => d.MarginDb), budget.MarginDb);
                    Assert.All(budget.Directions, d => Assert.Equal(
                        d.TransmitDbm + d.AntennaGainsDb - d.HandAndBodyDb - d.PolarisationDb - budget.PathLossDb, d.ReceivedDbm, LineLoss.SameDb));
                    Assert.All(budget.Directions, d => Assert.Equal(d.ReceivedDbm - d.SensitivityDbm, d.MarginDb, LineLoss.SameDb));
                }
            },
            cases: Houses);
}
