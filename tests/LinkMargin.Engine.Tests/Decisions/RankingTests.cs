using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Decisions;

/// <summary>Seats that ask for 10 dB, unless said otherwise, and spots told by their margins there.</summary>
public sealed class RankingTests
{
    [Fact]
    public void A_spot_is_as_good_as_its_worst_seat() =>
        Assert.Equal(["even", "uneven"], Names(Spot("uneven", 40, 12), Spot("even", 13, 13)));

    [Fact]
    public void A_seat_that_asks_for_more_weighs_more()
    {
        // 16 dB where 15 are asked leave 1; 12 where 10 are asked leave 2.
        SpotScore first = new(SpotNamed("first"), [Budget(16, 15), Budget(20, 10)]);
        SpotScore second = new(SpotNamed("second"), [Budget(30, 15), Budget(12, 10)]);
        Assert.Equal(["second", "first"], [.. Ranking.Of([first, second]).Scores.Select(s => s.Spot.Name)]);
        Assert.Equal(1, first.Weakest.HeadroomDb);
    }

    [Fact]
    public void Equals_are_parted_by_seats_met_then_mean_then_name()
    {
        Assert.Equal(["two met", "one met"], Names(Spot("one met", 5, 9, 40), Spot("two met", 5, 10, 10)));
        Assert.Equal(["higher mean", "a lower mean"], Names(Spot("a lower mean", 12, 12), Spot("higher mean", 12, 13)));
        Assert.Equal(["a", "b"], Names(Spot("b", 12, 13), Spot("a", 12, 13)));
    }

    [Fact]
    public void A_seat_used_more_often_weighs_more_where_the_worst_are_equal()
    {
        LinkBudget Used(double marginDb, double days, int seat) => Budget(marginDb, 10, seat) is var b ? b with { Seat = b.Seat with { UsedDays = days } } : b;
        SpotScore daily = new(SpotNamed("serves daily"), [Used(5, 1, 0), Used(9, 1, 1), Used(12, 30, 2)]);
        SpotScore rarely = new(SpotNamed("a serves rarely"), [Used(5, 30, 0), Used(30, 1, 1), Used(30, 1, 2)]);
        Assert.Equal(["serves daily", "a serves rarely"], [.. Ranking.Of([rarely, daily]).Scores.Select(s => s.Spot.Name)]);
        Assert.Equal(30.0 / 32, daily.PassingShare, 1e-12);
    }

    [Fact]
    public void A_seat_of_several_players_is_met_where_each_of_them_is()
    {
        LinkBudget Player(double marginDb, int number) =>
            Budget(marginDb, 10, number) is var b ? b with { Seat = b.Seat with { Group = "sofa" } } : b;
        SpotScore one = new(SpotNamed("one"), [Player(20, 0), Player(9, 1), Budget(12, 10, 2)]);
        Assert.Equal((2, 1), (one.Seats, one.SeatsPassing));
        Assert.Equal(2, new SpotScore(SpotNamed("both"), [Player(20, 0), Player(10, 1), Budget(12, 10, 2)]).SeatsPassing);
        Assert.Equal("seat 1", one.Weakest.Seat.Name);
    }

    [Fact]
    public void Rounding_does_not_part_equals() =>
        Assert.Equal(["a", "b"], Names(Spot("b", 12 + 1e-12, 13), Spot("a", 12, 13)));

    [Theory]
    [InlineData(10, true)]
    [InlineData(9.999, false)]
    public void A_seat_is_met_at_just_what_it_asks_for(double marginDb, bool met)
    {
        SpotScore score = Spot("spot", marginDb);
        Assert.Equal(met, score.Weakest.Passes);
        Assert.Equal(met ? 1 : 0, score.SeatsPassing);
    }

    [Fact]
    public void A_seat_short_at_every_spot_is_never_met_and_one_met_anywhere_is_not_listed()
    {
        Ranking ranking = Ranking.Of([Spot("a", 5, 12, 3), Spot("b", 20, 3, 9)]);
        Assert.Equal(["seat 2"], ranking.SeatsNeverPassing.Select(s => s.Name));
        Assert.Empty(Ranking.Of(Array.Empty<SpotScore>()).SeatsNeverPassing);
    }

    [Fact, Law]
    public void The_order_of_asking_plays_no_part() =>
        Gen.Select(Gen.Int[0, 3].Array[3].Array[2, 6], Gen.Int[0, 1000]).ForAll((margins, seed) =>
        {
            // Few distinct margins, so that every way of parting equals is taken.
            SpotScore[] scores = [.. margins.Select((m, i) => Spot($"spot {i}", [.. m.Select(x => 8.0 + x)]))];
            SpotScore[] shuffled = [.. scores];
            new Random(seed).Shuffle(shuffled);
            Assert.Equal(Names(scores), Names(shuffled));
            Assert.Equal(scores.Max(s => s.Weakest.HeadroomDb), Ranking.Of(shuffled).Scores[0].Weakest.HeadroomDb);
        });

    [Fact, Law]
    public void A_house_is_ranked_by_its_own_budgets() =>
        RandomHouse.Any.ForAll(
            house =>
            {
                var scene = Scene.Compile(house);
                Ranking ranking = Ranking.Of(new LinkModel(scene, ModelDepth.Direct));
                Assert.Equal(house.Spots.Count, ranking.Scores.Count);
                Assert.All(ranking.Scores, score => Assert.Equal(
                    house.Seats.Min(seat => LinkEvaluation.Budget(new LinkModel(scene, ModelDepth.Direct), score.Spot, seat).MarginDb - seat.RequiredDb),
                    score.Weakest.HeadroomDb));
                Assert.All(ranking.Scores.Zip(ranking.Scores.Skip(1)), pair =>
                    Assert.True(pair.First.Weakest.HeadroomDb >= pair.Second.Weakest.HeadroomDb - 1e-9));
            },
            cases: 100);

    [Fact, Law]
    public void Swapping_the_names_of_spots_never_changes_the_ranking() =>
        Gen.Select(RandomHouse.Any, Gen.Int[0, 1000]).ForAll(
            (house, seed) =>
            {
                string[] names = [.. house.Spots.Select(s => s.Name)];
                new Random(seed).Shuffle(names);
                House swapped = house with { Spots = [.. house.Spots.Select((s, i) => s with { Name = names[i] })] };
                SpotScore[] before = [.. Ranking.Of(new LinkModel(house, ModelDepth.Direct)).Scores], after = [.. Ranking.Of(new LinkModel(swapped, ModelDepth.Direct)).Scores];
                Assert.Equal(before.Select(s => s.WeakestHeadroomDb), after.Select(s => s.WeakestHeadroomDb), (a, b) => Math.Abs(a - b) < 1e-9);

                // Names part spots that are equal in everything, and those only.
                Assert.All(before.Zip(after), pair => Assert.True(
                    pair.First.Spot with { Name = "" } == pair.Second.Spot with { Name = "" } || Math.Abs(pair.First.MeanHeadroomDb - pair.Second.MeanHeadroomDb) < 1e-8));
            },
            cases: 100);

    [Fact]
    public void What_is_counted_on_decides_and_is_asked_for_in_one_place()
    {
        // Somebody who counts on 9 dB less at seat 0 than its median.
        var wary = new DecisionMargin("wary", budget => budget.MarginDb - (budget.Seat.Name == "seat 0" ? 9 : 0));
        SpotScore a = new(SpotNamed("a"), [Budget(18, 10, 0), Budget(30, 10, 1)], wary), b = new(SpotNamed("b"), [Budget(30, 10, 0), Budget(15, 10, 1)], wary);
        Assert.Equal(["b", "a"], [.. Ranking.Of([a, b]).Scores.Select(s => s.Spot.Name)]);
        Assert.Equal((-1, 1, 0.5), (a.WeakestHeadroomDb, a.SeatsPassing, a.PassingShare));
        Assert.Equal(["seat 0"], Ranking.Of([a]).SeatsNeverPassing.Select(s => s.Name));
        Assert.Equal(["a", "b"], Names(Spot("a", 18, 30), Spot("b", 30, 15)));
    }

    [Fact]
    public void Consoles_in_use_at_once_are_scored_by_the_seats_that_play_them()
    {
        LinkBudget Playing(string? spot, double marginDb, int seat) => Budget(marginDb, 10, seat) is var b ? b with { Seat = b.Seat with { Plays = spot } } : b;
        SpotScore a = new(SpotNamed("a"), [Playing("a", 12, 0), Playing(null, 3, 1)]), b = new(SpotNamed("b"), [Playing(null, 20, 1)]);
        SpotScore alone = Assert.Single(Ranking.Of([a, b]).InUse);
        Assert.Equal(("a", 2.0, 1), (alone.Spot.Name, alone.WeakestHeadroomDb, alone.Seats));
    }

    [Fact]
    public void Without_seats_or_spots_there_is_nothing_to_rank()
    {
        House house = SimpleHouse.OfWalls();
        Assert.Empty(Ranking.Of(new LinkModel(house with { Spots = [SpotNamed("spot")] }, ModelDepth.Direct)).Scores);
        Assert.Empty(Ranking.Of(new LinkModel(house with { Seats = [SeatAsking(0, 10)] }, ModelDepth.Direct)).Scores);
        Assert.Throws<ArgumentException>(() => new SpotScore(SpotNamed("spot"), []));
    }

    private static string[] Names(params SpotScore[] scores) => [.. Ranking.Of(scores).Scores.Select(s => s.Spot.Name)];

    private static SpotScore Spot(string name, params double[] marginsDb) =>
        new(SpotNamed(name), [.. marginsDb.Select((m, i) => Budget(m, 10, i))]);

    private static Spot SpotNamed(string name) => new(name, 0, default, 1);

    private static Seat SeatAsking(int number, double requiredDb) => new($"seat {number}", 0, default, 1, null, requiredDb);

    private static LinkBudget Budget(double marginDb, double requiredDb, int seat = 0) => new(
        SpotNamed("spot"), SeatAsking(seat, requiredDb), 1, Band.Bluetooth.Equivalent, [], 60, [], marginDb);
}
