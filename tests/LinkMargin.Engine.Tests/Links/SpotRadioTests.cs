using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Decisions.Remedies;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>A spot whose console has a radio of its own is judged by it everywhere.</summary>
public sealed class SpotRadioTests
{
    private const double GainDb = 4;

    private static readonly Spot Plain = new("plain", 0, new Point2(1, 1), 1);
    private static readonly Spot Strong = Plain with { Name = "strong", Radio = SimpleHouse.Radio with { Name = "strong", AntennaGainDb = GainDb } };
    private static readonly Seat Sofa = new("sofa", 0, new Point2(4, 3), 0.6, null, 10);

    private static readonly House House = SimpleHouse.Of(new Level("level", 0, SimpleHouse.HeightMetres)
    {
        Rooms = [new Room("room", new Polygon([new(0, 0), new(5, 0), new(5, 5), new(0, 5)]))],
        Walls = [SimpleHouse.FullWall("wall", new(2.5, 0), new(2.5, 5), 6)],
    }) with { Spots = [Plain, Strong], Seats = [Sofa] };

    private static readonly LinkModel Model = new(House, ModelDepth.Direct);

    [Fact]
    public void Its_margins_are_better_by_what_the_radio_gains()
    {
        Ranking ranking = Ranking.Of(Model);
        Assert.Equal("strong", ranking.Scores[0].Spot.Name);
        Assert.Equal(GainDb, ranking.Scores[0].Weakest.MarginDb - ranking.Scores[1].Weakest.MarginDb, 1e-9);
    }

    [Fact]
    public void So_is_its_field()
    {
        double[] plain = [.. FieldOf(Plain).MarginDb], strong = [.. FieldOf(Strong).MarginDb];
        Assert.All(plain.Zip(strong).Where(pair => !double.IsNaN(pair.First)), pair => Assert.Equal(GainDb, pair.Second - pair.First, 1e-9));
    }

    [Fact]
    public void So_is_its_margin_to_count_on()
    {
        var uncertainty = HouseUncertainty.Of(Model, House.Spots, House.Seats, new UncertaintyBasis(new Spreads(4, 0.2, 3, 0.05, 20, 10, 12)));
        double plain = uncertainty.Between(Plain, Sofa).MarginAtConfidenceDb, strong = uncertainty.Between(Strong, Sofa).MarginAtConfidenceDb;
        Assert.Equal(GainDb, strong - plain, 0.1); // radios without a spread differ by their gain alone; the model's share is drawn alike
    }

    [Fact]
    public void So_is_what_would_help_it()
    {
        ImproveResult result = new ImproveSearch(House, Model, new ImproveRequest(Strong, [], [])).Run();
        ImproveResult plain = new ImproveSearch(House, Model, new ImproveRequest(Plain, [], [])).Run();
        Assert.Equal(GainDb, result.Before.WeakestHeadroomDb - plain.Before.WeakestHeadroomDb, 1e-9);
        Assert.NotEmpty(result.Alone);
        Assert.All(result.Alone, remedy => Assert.Equal(remedy.GainDb, remedy.After.WeakestHeadroomDb - result.Before.WeakestHeadroomDb, 1e-9));
    }

    private static Field FieldOf(Spot spot) => FieldComputation.Compute(Model, new FieldRequest(spot, 0));
}
