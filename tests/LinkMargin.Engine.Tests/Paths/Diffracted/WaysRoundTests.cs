using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Paths.Diffracted;

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
                DiffractedPaths search = ((FullSpotModel)model.For(spot)).DiffractedPaths;
                Assert.All(house.Seats, seat => AreFound(search, house.PositionOf(seat)));
            }
        },
        cases: 40);

    private static void AreFound(DiffractedPaths search, Point3 hands)
    {
        DiffractedPath[] all = Found(search, hands, 0);
        if (all.Length == 0 || all[0].Power < 1e-15)
        {
            return; // none, or none that anyone could measure
        }

        // The search weighs a way before its bends are worked out together and before its last leg; a factor of 20 covers what
        // the bends together can lose less than one by one.
        double strongest = all.Max(way => way.Power);
        DiffractedPath[] kept = Found(search, hands, strongest / 20);
        Assert.All(all.Where(way => way.Power > strongest / 2), way =>
            Assert.Contains(kept, other => other.DiffractionEdge == way.DiffractionEdge && other.Power == way.Power));
    }

    private static DiffractedPath[] Found(DiffractedPaths search, Point3 hands, double least)
    {
        var found = new DiffractedPath[DiffractedPaths.Most];
        int count = search.To(hands, null, least, new TraceBuffer(), found);
        return found[..count];
    }
}
