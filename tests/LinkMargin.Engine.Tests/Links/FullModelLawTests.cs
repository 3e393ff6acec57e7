using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>However a house is written and laid on the paper, the full model says the same.</summary>
public sealed class FullModelLawTests
{
    // Where a front keeps next to nothing its edges cancel down to rounding: the worst seen over thousands of links is 4e-9 dB.
    private const double SameDb = 1e-6;

    private const int Houses = 60;

    private static readonly Gen<House> AnyHouse = Gen.OneOf(RoomedHouse.Any, RoomedHouse.Any, RandomHouse.Any);

    private static readonly Gen<(House House, int Level, int Wall)> HouseAndWall =
        from house in AnyHouse.Where(h => h.Levels.Any(l => l.Walls.Count > 0))
        from level in Gen.Int[0, house.Levels.Count - 1]
        where house.Levels[level].Walls.Count > 0
        from wall in Gen.Int[0, house.Levels[level].Walls.Count - 1]
        select (house, level, wall);

    [Fact, Law]
    public void Moving_turning_or_mirroring_a_house_changes_nothing() =>
        Gen.Select(AnyHouse, HouseMotion.Any).ForAll(
            (house, motion) => AreTheSame(house, motion.Of(house)), cases: Houses);

    [Fact, Law]
    public void Cutting_a_wall_in_two_changes_nothing() =>
        Gen.Select(HouseAndWall, Gen.OneOf(Gen.Double[0.01, 0.99], Gen.OneOf(0.25, 0.5))).ForAll(
            (drawn, share) =>
            {
                (House house, int level, int wall) = drawn;
                Wall[] parts = WallEdits.Cut(house.Levels[level].Walls[wall], share);
                AreTheSame(house, WallEdits.Replace(house, level, wall, parts));
            },
            cases: Houses);

    [Fact, Law]
    public void Drawing_a_wall_from_its_other_end_changes_nothing() =>
        HouseAndWall.ForAll(
            (house, level, wall) =>
                AreTheSame(house, WallEdits.Replace(house, level, wall, WallEdits.Reversed(house.Levels[level].Walls[wall]))),
            cases: Houses);

    [Fact, Law]
    public void Listing_the_walls_in_another_order_changes_nothing() =>
        AnyHouse.ForAll(
            house => AreTheSame(house, house with
            {
                Levels = [.. house.Levels.Select(level => level with { Walls = [.. level.Walls.Reverse()] })],
            }),
            cases: Houses);

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
