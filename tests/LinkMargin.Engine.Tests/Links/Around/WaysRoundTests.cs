using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Around;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links.Around;

/// <summary>The search for ways round stops early, and must not stop too early.</summary>
public sealed class WaysRoundTests
{
    [Fact, Law]
    public void A_way_far_above_the_least_power_is_found_with_it_as_without() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            foreach (Spot spot in house.Spots)
            {
                WaysRound search = ((FullSpotModel)model.For(spot)).WaysRound;
                Assert.All(house.Seats, seat => AreFound(search, house.PositionOf(seat)));
            }
        },
        cases: 40);

    private static void AreFound(WaysRound search, Point3 hands)
    {
        WayRound[] all = Found(search, hands, 0);
        if (all.Length == 0 || all[0].Power < 1e-15)
        {
            return; // none, or none that anyone could measure
        }

        // The search weighs a way before its bends are worked out together and before its last leg; a factor of 20 covers what
        // the bends together can lose less than one by one.
        double strongest = all.Max(way => way.Power);
        WayRound[] kept = Found(search, hands, strongest / 20);
        Assert.All(all.Where(way => way.Power > strongest / 2), way =>
            Assert.Contains(kept, other => other.Bend == way.Bend && other.Power == way.Power));
    }

    private static WayRound[] Found(WaysRound search, Point3 hands, double least)
    {
        var found = new WayRound[WaysRound.Most];
        int count = search.To(hands, null, least, new TraceBuffer(), found);
        return found[..count];
    }
}
