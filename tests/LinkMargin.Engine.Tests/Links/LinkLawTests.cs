using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>What holds for every straight line in every house.</summary>
public sealed class LinkLawTests
{
    private const double SameDb = 1e-9;
    private const long Houses = 200;

    private static readonly Gen<(House House, Line[] Lines)> HouseAndLines =
        from house in RandomHouse.Any
        from lines in RandomLine.In(house).Array[20]
        select (house, lines);

    [Fact]
    public void Exchanging_the_ends_of_a_path_changes_nothing() =>
        HouseAndLines.Sample(
            (house, lines) =>
            {
                var scene = Scene.Compile(house);
                Assert.All(lines, line => Assert.Equal(LossDb(scene, line), LossDb(scene, line.Reversed), SameDb));
            },
            iter: Houses);

    [Fact]
    public void Moving_turning_or_mirroring_a_house_changes_no_path() =>
        Gen.Select(HouseAndLines, HouseMotion.Any).Sample(
            (drawn, motion) =>
            {
                Scene here = Scene.Compile(drawn.House), there = Scene.Compile(motion.Of(drawn.House));
                Assert.All(drawn.Lines, line => Assert.Equal(LossDb(here, line), LossDb(there, motion.Of(line)), SameDb));
            },
            iter: Houses);

    [Fact]
    public void Moving_turning_or_mirroring_a_house_changes_no_margin() =>
        Gen.Select(RandomHouse.Any, HouseMotion.Any).Sample(
            (house, motion) =>
            {
                LinkBudget[][] here = LinkEvaluation.Budgets(Scene.Compile(house));
                LinkBudget[][] there = LinkEvaluation.Budgets(Scene.Compile(motion.Of(house)));
                Assert.Equal(house.Seats.Count, here.Length);
                foreach ((LinkBudget a, LinkBudget b) in here.SelectMany(row => row).Zip(there.SelectMany(row => row)))
                {
                    Assert.Equal(a.MarginDb, b.MarginDb, SameDb);
                }
            },
            iter: Houses);

    private static double LossDb(Scene scene, Line line) =>
        LinkEvaluation.PathLossDb(scene, line.From, line.To, new TraceBuffer());
}
