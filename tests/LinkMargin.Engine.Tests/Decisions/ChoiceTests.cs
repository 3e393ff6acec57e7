using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Quantities;

namespace LinkMargin.Engine.Tests.Decisions;

/// <summary>Spots told by their level and their margin at the one seat, which asks for 10 dB.</summary>
public sealed class ChoiceTests
{
    [Fact]
    public void Is_the_first_of_the_ranking_against_the_next_and_the_best_of_each_other_level()
    {
        Choice choice = Of(("b1", 0, 20), ("b2", 0, 18), ("m1", 1, 15), ("m2", 1, 14), ("t1", 2, 12));
        Assert.Equal("b1", choice.Best.Spot.Name);
        Assert.Equal("b2", choice.Next?.Spot.Name);
        Assert.Equal(["m1", "t1"], choice.BestOfOtherLevels.Select(s => s.Spot.Name));
        Assert.Equal(["b2", "m1", "t1"], choice.Rivals.Select(s => s.Spot.Name));
        Assert.Equal(5, choice.LeadDb(choice.BestOfOtherLevels[0]), 1e-12);
    }

    [Fact]
    public void Names_a_rival_once_though_it_is_both_next_and_best_of_its_level() =>
        Assert.Equal(["m1"], Of(("b1", 0, 20), ("m1", 1, 15)).Rivals.Select(s => s.Spot.Name));

    [Fact]
    public void Another_level_loses_the_seats_that_it_fails_and_the_chosen_spot_does_not()
    {
        Choice choice = Of(("b1", 0, 12), ("m1", 1, 9), ("t1", 2, 11));
        Assert.Equal(["b1", "t1", "m1"], choice.BestOfLevels.Select(s => s.Spot.Name));
        Assert.Equal(["seat"], choice.SeatsLost(choice.BestOfLevels.Last()));
        Assert.Empty(choice.SeatsLost(choice.BestOfOtherLevels[0]));
        Assert.Empty(Of(("b1", 0, 8), ("m1", 1, 7)).SeatsLost(ScoreOf(new Spot("m1", 1, default, 1), 7)));
    }

    [Fact]
    public void May_stand_alone()
    {
        Choice choice = Of(("b1", 0, 20));
        Assert.Null(choice.Next);
        Assert.Empty(choice.Rivals);
    }

    [Fact]
    public void Needs_something_to_choose_from() =>
        Assert.Throws<ArgumentException>(() => Choice.Of(new Ranking([])));

    private static Choice Of(params (string Name, int Level, double MarginDb)[] spots) =>
        Choice.Of(Ranking.Of(spots.Select(s => ScoreOf(new Spot(s.Name, s.Level, default, 1), s.MarginDb))));

    private static SpotScore ScoreOf(Spot spot, double marginDb) => new(
        spot,
        [new LinkBudget(spot, new Seat("seat", 0, default, 1, null, 10), 1, Band.Bluetooth.Equivalent, [], 60, [], marginDb)]);
}
