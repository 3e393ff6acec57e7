using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>However a house is written and laid on the paper, the full model says the same.</summary>
public sealed class FullModelLawTests
{
    // The direct model holds these to 1e-9 dB. The full one looks at fronts, mirrors and room shares whose ends rounding may put
    // on either side of an edge that a line of round numbers runs through: the worst seen over thousands of houses is 0.04 dB.
    private const double SameDb = 0.2;
    private const long Houses = 60;

    private static readonly Gen<House> AnyHouse = Gen.OneOf(RoomedHouse.Any, RoomedHouse.Any, RandomHouse.Any);

    private static readonly Gen<(House House, int Level, int Wall)> HouseAndWall =
        from house in AnyHouse.Where(h => h.Levels.Any(l => l.Walls.Count > 0))
        from level in Gen.Int[0, house.Levels.Count - 1]
        where house.Levels[level].Walls.Count > 0
        from wall in Gen.Int[0, house.Levels[level].Walls.Count - 1]
        select (house, level, wall);

    [Fact]
    public void Drawing_a_wall_from_its_other_end_changes_nothing() =>
        HouseAndWall.Sample(
            (house, level, wall) =>
                AreTheSame(house, WallEdits.Replace(house, level, wall, WallEdits.Reversed(house.Levels[level].Walls[wall]))),
            iter: Houses);

    [Fact]
    public void Listing_the_walls_in_another_order_changes_nothing() =>
        AnyHouse.Sample(
            house => AreTheSame(house, house with
            {
                Levels = [.. house.Levels.Select(level => level with { Walls = [.. level.Walls.Reverse()] })],
            }),
            iter: Houses);

    private static void AreTheSame(House here, House there)
    {
        LinkBudget[] before = Budgets(here), after = Budgets(there);
        Assert.Equal(before.Length, after.Length);
        Assert.All(before.Zip(after), pair => Assert.Equal(pair.First.MarginDb, pair.Second.MarginDb, SameDb));
    }

    private static LinkBudget[] Budgets(House house)
    {
        var model = new LinkModel(house);
        return [.. house.Spots.SelectMany(spot => LinkEvaluation.Budgets(model, spot, house.Seats))];
    }
}
