using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Uncertainty;

/// <summary>However much a house loses, the figures of one link agree: all stop at the same greatest loss.</summary>
public sealed class GreatestLossTests
{
    private const int HouseCount = 30;

    private static readonly Spreads Some = new(4, 0.2, 3, 0.05, 20, 10, 12);

    public static TheoryData<ModelDepth, double> Depths() => new()
    {
        { ModelDepth.Direct, 1 }, { ModelDepth.Direct, 4 }, { ModelDepth.Direct, 50 },
        { ModelDepth.Full, 1 }, { ModelDepth.Full, 4 }, { ModelDepth.Full, 50 },
    };

    [Theory]
    [MemberData(nameof(Depths))]
    public void Margin_median_and_margin_to_count_on_agree_within_what_is_drawn(ModelDepth depth, double times)
    {
        foreach ((LinkModel model, House house) in LossyHouses(depth, times))
        {
            var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, new UncertaintyBasis(Some));
            foreach (LinkBudget budget in house.Spots.SelectMany(spot => LinkEvaluation.Budgets(model, spot, house.Seats)))
            {
                DrawnMargins drawn = uncertainty.With(budget);
                double leastDb = model.Radios.GreatestLossDb - PathLoss.GreatestDb;
                Assert.True(budget.MarginDb >= leastDb - 1e-9, $"{budget.MarginDb} below {leastDb}");
                Assert.InRange(drawn.MedianDb - budget.MarginDb, -drawn.SpreadDb, drawn.SpreadDb);
                Assert.InRange(drawn.MedianDb - uncertainty.MarginAtConfidenceDb(budget), 0, 3 * drawn.SpreadDb);
            }
        }
    }

    [Fact]
    public void Houses_so_lossy_are_among_them() =>
        Assert.Contains(
            LossyHouses(ModelDepth.Direct, 50),
            lossy => lossy.House.Spots.SelectMany(spot => LinkEvaluation.Budgets(lossy.Model, spot, lossy.House.Seats))
                .Any(budget => budget.PathLossDb == PathLoss.GreatestDb && budget.Paths[0].LossDb > PathLoss.GreatestDb));

    [Theory]
    [MemberData(nameof(Depths))]
    public void Shares_are_of_one_whole(ModelDepth depth, double times)
    {
        foreach ((LinkModel model, House house) in LossyHouses(depth, times))
        {
            foreach (LinkBudget budget in house.Spots.SelectMany(spot => LinkEvaluation.Budgets(model, spot, house.Seats)))
            {
                Assert.All(budget.Paths, path => Assert.InRange(budget.ShareOf(path), 0, 1));
                Assert.Equal(1, budget.Paths.Sum(budget.ShareOf), 1e-12);
            }
        }
    }

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void Ends_in_one_place_have_a_finite_margin_and_a_caution_that_says_so(ModelDepth depth)
    {
        // The free-space formula holds from a 4π-th of a wavelength on, 9.8 mm.
        double limitMetres = Band.Bluetooth.Equivalent.WavelengthMetres / (4 * Math.PI);
        Assert.All(new[] { 0, limitMetres * 0.999 }, metres => Assert.Contains(
            Apart(metres).Cautions, caution => caution.Contains("at the same place", StringComparison.Ordinal)));
        Assert.DoesNotContain(Apart(limitMetres * 1.001).Cautions, caution => caution.Contains("at the same place", StringComparison.Ordinal));

        LinkBudget Apart(double metres)
        {
            LinkBudget budget = LinkEvaluation.Budget(
                new LinkModel(SimpleHouse.OfWalls(), depth), new Spot("spot", 0, new Point2(1, 1), 1), SeatAt(metres));
            Assert.True(double.IsFinite(budget.MarginDb));
            Assert.True(budget.PathLossDb != 0 || !double.IsNegative(budget.PathLossDb), "−0");
            return budget;
        }

        static Seat SeatAt(double metres) => new("seat", 0, new Point2(1 + metres, 1), 1, null, 15);
    }

    private static IEnumerable<(LinkModel Model, House House)> LossyHouses(ModelDepth depth, double times)
    {
        for (uint i = 0; i < HouseCount; i++)
        {
            House house = RoomedHouse.Any.Generate(new PCG(i, 1), null, out _);
            house = HouseFabric.Replace(house, m => m with { LossDb = m.LossDb * times });
            yield return (new LinkModel(house, depth), house);
        }
    }
}
