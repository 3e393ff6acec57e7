using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;
using MathNet.Numerics.Distributions;

namespace LinkMargin.Engine.Tests.Uncertainty;

public sealed class CloseCallTests
{
    private static readonly Spreads Some = new(4, 0.2, 3, 0.05, 20, 10, 12);

    /// <summary>
    /// The difference of two independent normal quantities is normal with the sum of their variances (any handbook of
    /// statistics), so the farther spot is ahead with probability Φ(−difference/(4·√2)). Radios are in both alike.
    /// </summary>
    [Theory]
    [InlineData(2, 2)]
    [InlineData(2, 2.5)]
    [InlineData(2, 4)]
    [InlineData(2, 20)]
    public void Of_two_spots_with_normal_spreads_each_is_best_as_often_as_the_closed_form_says(double near, double far)
    {
        (HouseUncertainty uncertainty, Ranking ranking, _) = Judged(OpenField(new Point2(near, 0), new Point2(-far, 0)));
        double apartDb = 20 * Math.Log10(far / near);
        IReadOnlyList<double> best = uncertainty.ProbabilitiesBest(ranking.Scores);
        Assert.Equal(Normal.CDF(0, 1, apartDb / (4 * Math.Sqrt(2))), best[0], 5e-4); // steps of an eighth of a spread
    }

    /// <summary>By symmetry.</summary>
    [Fact]
    public void Of_spots_that_are_all_alike_each_is_best_as_often()
    {
        (HouseUncertainty uncertainty, Ranking ranking, _) = Judged(OpenField(new(3, 0), new(-3, 0), new(0, 3), new(0, -3)));
        Assert.All(uncertainty.ProbabilitiesBest(ranking.Scores), best => Assert.Equal(0.25, best, 1e-4));
    }

    /// <summary>Checked by plain counting: the law of large numbers over normal draws of what the model leaves out.</summary>
    [Fact]
    public void With_several_seats_the_worst_one_counts_as_counting_draws_says()
    {
        House house = OpenField(new(3, 0), new(-4, 1), new(1, 5)) with
        {
            Seats = [At("a", 0, 0), At("b", 5, 2), At("c", -2, -3)],
        };
        (HouseUncertainty uncertainty, Ranking ranking, _) = Judged(house);
        var random = new Random(7);
        double[] counted = new double[3];
        const int Draws = 200_000;
        for (int d = 0; d < Draws; d++)
        {
            double[] worst = [.. ranking.Scores.Select(score => score.Budgets.Min(budget => budget.MarginDb + Normal.Sample(random, 0, 4)))];
            counted[Array.IndexOf(worst, worst.Max())]++;
        }

        IReadOnlyList<double> best = uncertainty.ProbabilitiesBest(ranking.Scores);
        for (int s = 0; s < counted.Length; s++)
        {
            Assert.Equal(counted[s] / Draws, best[s], 0.005); // five times the counting's own spread
        }
    }

    [Fact, Law]
    public void Probabilities_add_up_to_one_and_go_with_the_spots_whatever_their_names_and_order() =>
        RoomedHouse.Any.Where(house => house.Spots.Count > 1 && house.Seats.Count > 0).ForAll(
            house =>
            {
                (HouseUncertainty uncertainty, Ranking ranking, _) = Judged(house, ModelDepth.Full);
                IReadOnlyList<double> best = uncertainty.ProbabilitiesBest(ranking.Scores);
                Assert.Equal(1, best.Sum(), 1e-9);
                Assert.All(best, one => Assert.InRange(one, 0, 1));

                House renamed = house with { Spots = [.. house.Spots.Reverse().Select(spot => spot with { Name = $"other {spot.Name}" })] };
                (HouseUncertainty again, Ranking same, _) = Judged(renamed, ModelDepth.Full);
                IReadOnlyList<double> likewise = again.ProbabilitiesBest(same.Scores);
                for (int s = 0; s < best.Count; s++)
                {
                    int there = same.Scores.ToList().FindIndex(score => score.Spot.Name == $"other {ranking.Scores[s].Spot.Name}");
                    Assert.Equal(best[s], likewise[there], 1e-9);
                }
            },
            cases: 10);

    [Fact]
    public void Two_spots_alike_are_too_close_to_call_and_one_of_their_own_links_is_to_be_read()
    {
        (HouseUncertainty uncertainty, Ranking ranking, LinkModel model) = Judged(OpenField(new(3, 0), new(-3.1, 0)));
        var call = CloseCall.Of(model, ranking, uncertainty, new UncertaintyBasis(Some));
        Assert.Equal(ranking.Scores[1].Spot, Assert.Single(call.Rivals).Spot);
        Assert.Equal("at 'seat'", call.Settling!.Where);
        Assert.InRange(call.Settling.UncertaintyLeft, 0.3, 0.95);
    }

    // Odds of two to one: Φ(x) = 2/3 at x = 0.43073 (table of the normal law), here 2.4366 dB, a distance 1.3238 times as far.
    [Theory]
    [InlineData(1.30, true)]
    [InlineData(1.35, false)]
    public void The_call_is_clear_from_odds_of_two_to_one_on(double timesAsFar, bool close)
    {
        (HouseUncertainty uncertainty, Ranking ranking, LinkModel model) = Judged(OpenField(new(2, 0), new(-2 * timesAsFar, 0)));
        var call = CloseCall.Of(model, ranking, uncertainty, new UncertaintyBasis(Some));
        Assert.Equal(close, call.Rivals.Count == 1);
        Assert.Equal(close, call.Settling is not null);
    }

    private static (HouseUncertainty Uncertainty, Ranking Ranking, LinkModel Model) Judged(House house, ModelDepth depth = ModelDepth.Direct)
    {
        var model = new LinkModel(house, depth);
        var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, new UncertaintyBasis(Some));
        return (uncertainty, Ranking.Of(model, uncertainty.AtConfidence), model);
    }

    // Nothing stands in the way and nothing is doubtful but the 4 dB that the model leaves out on each link.
    private static House OpenField(params Point2[] spots) => SimpleHouse.OfWalls() with
    {
        Spots = [.. spots.Select((plan, i) => new Spot($"spot {i}", 0, plan, 1))],
        Seats = [At("seat", 0, 0)],
    };

    private static Seat At(string name, double x, double y) => new(name, 0, new Point2(x, y), 1, null, 15);
}
