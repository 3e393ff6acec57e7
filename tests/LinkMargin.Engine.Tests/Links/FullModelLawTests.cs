using CsCheck;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>However a house is written and laid on the paper, the full model says the same.</summary>
public sealed class FullModelLawTests
{
    // Where a front keeps next to nothing its edges cancel down to rounding: the worst seen over 40,000 links is 2e-9 dB.
    private const double SameDb = 1e-6;

    private const int Houses = 60;

    private static readonly Gen<House> AnyHouse = Gen.OneOf(RoomedHouse.Any, RoomedHouse.Any, RandomHouse.Any);

    private static readonly Gen<(House House, int Level, int Wall)> HouseAndWall =
        from house in AnyHouse.Where(h => h.Levels.Any(l => l.Walls.Count > 0))
        from level in Gen.Int[0, house.Levels.Count - 1]
        where house.Levels[level].Walls.Count > 0
        from wall in Gen.Int[0, house.Levels[level].Walls.Count - 1]
        select (house, level, wall);

    // The order of draws is that of the seeds below.
    private static readonly Gen<((House House, int Level, int Wall) Drawn, HouseMotion Motion, double Share, int[] Order)> AnyWriting =
        from house in AnyHouse.Where(h => h.Levels.Any(l => l.Walls.Count > 0))
        from motion in HouseMotion.Any
        from level in Gen.Int[0, house.Levels.Count - 1]
        where house.Levels[level].Walls.Count > 0
        from wall in Gen.Int[0, house.Levels[level].Walls.Count - 1]
        from share in Gen.OneOf(Gen.Double[0.01, 0.99], Gen.OneOf(0.25, 0.5))
        from order in Gen.Int[0, 1 << 20].Array[80]
        select ((house, level, wall), motion, share, order);

    [Fact, Law]
    public void Moving_turning_or_mirroring_a_house_changes_nothing() =>
        Gen.Select(AnyHouse, HouseMotion.Any).ForAll(
            (house, motion) => AreTheSame(house, motion.Of(house)),
            cases: Houses,
            also: [537327565690174120, 7732023074030943007, 6824963822408779004, 4894933585154133643, 7510177892869475495, 6130965301793675776, 7755439153681044873]);

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
        AnyHouse.ForAll(house => AreTheSame(house, Relisted(house, walls => walls.Reverse())), cases: Houses);

    // Each failed once: walls ending within a centimetre, slivers, planes and edges a hair apart, an end of the link on a joint or
    // a hair from a surface, a fixture looked at from its other side.
    [Theory]
    [InlineData("0pespXpLEQZ1")]
    [InlineData("1J51WgHuPnE1")]
    [InlineData("2hf7lp4pAw61")]
    [InlineData("36qQW7SV8kU2")]
    [InlineData("4EGB1LFwDUe1")]
    [InlineData("4sby4OwtTZn1")]
    [InlineData("53GGB6SmU6N1")]
    [InlineData("6sc4RoSUNu81")]
    [InlineData("81DQ-M04YyR1")]
    [InlineData("844I6l1Nxwh1")]
    [InlineData("8RHZRp1WVht1")]
    [InlineData("8TQRLNZQQFw1")]
    [InlineData("9tsovl8lTQX1")]
    [InlineData("aUQYe4x36id1")]
    [InlineData("c8KYgH_VNYU1")]
    [InlineData("d_l6LBlWpBD1")]
    [InlineData("ejpCpnehfS81")]
    [InlineData("eyy-0W2EWx31")]
    [InlineData("faTLts1A-hb1")]
    [InlineData("fEtj2cybl441")]
    [InlineData("fJ3A5vWfd3a1")]
    public void However_a_house_is_written_it_says_the_same(string seed)
    {
        ((House house, int level, int wall), HouseMotion motion, double share, int[] order) = AnyWriting.Generate(PCG.Parse(seed), null, out _);
        Wall drawn = house.Levels[level].Walls[wall];
        AreTheSame(house, motion.Of(house));
        AreTheSame(house, WallEdits.Replace(house, level, wall, WallEdits.Cut(drawn, share)));
        AreTheSame(house, WallEdits.Replace(house, level, wall, WallEdits.Reversed(drawn)));
        AreTheSame(house, Relisted(house, walls => walls.Reverse()));
        AreTheSame(house, Relisted(house, walls => walls.Select((w, i) => (w, i)).OrderBy(pair => order[pair.i % order.Length]).Select(pair => pair.w)));
    }

    [Theory]
    [InlineData("2AHg4Oxu6tyb")]
    public void Listing_the_walls_in_another_order_changes_nothing_where_it_once_did(string seed)
    {
        House house = AnyHouse.Generate(PCG.Parse(seed), null, out _);
        AreTheSame(house, Relisted(house, walls => walls.Reverse()));
    }

    private static House Relisted(House house, Func<IEnumerable<Wall>, IEnumerable<Wall>> order) => house with
    {
        Levels = [.. house.Levels.Select(level => level with { Walls = [.. order(level.Walls)] })],
    };

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
