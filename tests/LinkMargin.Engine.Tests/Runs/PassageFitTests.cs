using LinkMargin.Engine.Cables;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;

namespace LinkMargin.Engine.Tests.Runs;

/// <summary>Filled shares by NEC, chapter 9, table 1: 53 % with one cable, 31 % with two, 40 % with more; the jam band 2.8 to 3.2.</summary>
public sealed class PassageFitTests
{
    [Theory]
    [InlineData(1, 0.53)]
    [InlineData(2, 0.31)]
    [InlineData(3, 0.40)]
    public void The_smallest_bore_is_the_root_of_the_squares_over_the_share(int cables, double share)
    {
        double bore = Math.Sqrt(cables * 0.006 * 0.006 / share);
        Assert.True(Fit(bore * 1.0001, cables).Fits);
        Assert.False(Fit(bore * 0.9999, cables).Fits);
    }

    [Theory]
    [InlineData(2.75, false)]
    [InlineData(2.81, true)]
    [InlineData(3.19, true)]
    [InlineData(3.25, false)]
    public void Three_cables_jam_in_a_band_of_bores(double bores, bool mayJam) => Assert.Equal(mayJam, Fit(bores * 0.006, 3).MayJam);

    [Fact]
    public void Four_cables_do_not_jam() => Assert.False(Fit(3 * 0.006, 4).MayJam);

    /// <summary>A moulded plug of 21 x 12 mm is 24.2 mm across its corners.</summary>
    [Theory]
    [InlineData(24.3, 0, true)]
    [InlineData(24.1, 0, false)]
    [InlineData(30.3, 1, true)]
    [InlineData(30.1, 1, false)]
    public void A_plug_passes_by_its_diagonal_beside_what_is_there(double boreMillimetres, int held, bool passes)
    {
        var plug = new CableKind("picture", CableUse.Picture, 0.005, 0.03, true, new PlugSize(0.021, 0.012), "invented for tests");
        Passage passage = Bore(boreMillimetres / 1000) with { Holds = [.. Enumerable.Repeat(Kind, held)] };
        Assert.Equal(passes, new PassageFit(passage, [plug]).Stuck.Count == 0);
    }

    [Theory]
    [InlineData(21, 12, true)]
    [InlineData(12, 21, true)]
    [InlineData(20.9, 12, false)]
    [InlineData(30, 11.9, false)]
    public void A_plug_passes_a_slot_either_way_round(double width, double height, bool passes) =>
        Assert.Equal(passes, PassageFit.PassesEmpty(
            new Passage("slot", 0, 0, default, new Point2(1, 0)) { Clear = new PlugSize(width / 1000, height / 1000) }, new PlugSize(0.021, 0.012)));

    [Fact]
    public void A_passage_that_nobody_measured_takes_all() => Assert.True(new PassageFit(new Passage("stair", 0, 1, default, default), [Kind, Kind]).Fits);

    /// <summary>IRC R502.8.1 with the dressed depths of 2 x 6 to 2 x 12 (5.5, 7.25, 9.25, 11.25 in): 1.50, 2.42, 3.08, 3.75 in.</summary>
    [Theory]
    [InlineData(5.5, 1.5)]
    [InlineData(7.25, 2.42)]
    [InlineData(9.25, 3.08)]
    [InlineData(11.25, 3.75)]
    [InlineData(3.5, 0)]
    public void The_greatest_hole_in_a_sawn_joist(double depthInches, double holeInches) =>
        Assert.Equal(holeInches, JoistHole.GreatestMetres(depthInches * 0.0254) / 0.0254, 0.005);

    private static readonly CableKind Kind = new("wire", CableUse.Other, 0.006, 0.024, false, new PlugSize(0.012, 0.008), "invented for tests");

    private static Passage Bore(double metres) => new("chase", 0, 1, default, default) { BoreMetres = metres };

    private static PassageFit Fit(double bore, int cables) => new(Bore(bore) with { Holds = [.. Enumerable.Repeat(Kind, cables)] }, []);
}
