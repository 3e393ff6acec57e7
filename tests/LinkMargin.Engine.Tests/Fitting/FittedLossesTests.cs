using CsCheck;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Fitting;

public sealed class FittedLossesTests
{
    private static readonly Spreads Spreads = new(4, 0.2, 3, 0.05, 20, 10, 12);

    [Fact, Law]
    public void Shifts_of_nothing_change_no_loss() => RandomHouse.Any.ForAll(
        house =>
        {
            House after = Fitted(house, 0).ApplyTo(house);
            return HouseFabric.Of(house).Select(m => m.LossDb).SequenceEqual(HouseFabric.Of(after).Select(m => m.LossDb));
        },
        cases: 20);

    [Fact, Law]
    public void No_loss_goes_below_nothing() => RandomHouse.Any.ForAll(
        house => HouseFabric.Of(Fitted(house, -1000).ApplyTo(house)).All(m => m.LossDb == 0 && m.ThroughDb is null or 0), cases: 20);

    [Fact]
    public void A_joist_is_shifted_by_its_depth_and_ribs_in_walls_with_it()
    {
        Material timber = new("timber", 3, 1, "invented");
        Material joist = timber with { Name = "timber-200mm", LossDb = 6, SpreadDb = 2, ScaledFrom = "timber", Scale = 2 };
        Material stud = new("stud wall", 4, 1, "invented") { Ribs = new Ribs(joist, 0.05, 0.2, 0.4), ThroughDb = 9 };
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", new(0, 0), new(4, 0), 1) with { Material = stud });
        Assert.Equal(
            [("timber", 3.0, Spreads.InCommonDb(1)), ("stud wall", 4.0, Spreads.InCommonDb(1))],
            HousePriors.Of(house, Spreads).Select(p => (p.Name, p.LossDb, p.SpreadDb)).OrderBy(p => p.LossDb));
        FittedLosses fitted = new(
            "h", 1, [new FittedMaterial("timber", 3, 1, 0.5, 0.25), new FittedMaterial("stud wall", 4, 1, -1, 0.5)], [], (_, _) => 0);
        Material after = HouseFabric.Of(fitted.ApplyTo(house)).Single(m => m.Name == "stud wall");
        Assert.Equal((3.0, 8.0, 0.5), (after.LossDb, after.ThroughDb!.Value, after.FittedSpreadDb!.Value));
        Assert.Equal((7.0, 0.5), (after.Ribs!.Material.LossDb, after.Ribs.Material.FittedSpreadDb!.Value));
    }

    private static FittedLosses Fitted(House house, double shiftDb) => new(
        house.Name, 1, [.. HousePriors.Of(house, Spreads).Select(p => new FittedMaterial(p.Name, p.LossDb, p.SpreadDb, shiftDb, 1))], [], (_, _) => 0);
}
