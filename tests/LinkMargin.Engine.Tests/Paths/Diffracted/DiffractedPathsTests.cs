using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffracted;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Paths.Diffracted;

/// <summary>The search for diffracted paths stops early, and must not stop too early.</summary>
public sealed class DiffractedPathsTests
{
    [Fact, Law]
    public void A_path_far_above_the_least_power_is_found_with_it_as_without() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            foreach (Spot spot in house.Spots)
            {
                var from = (FullSpotModel)model.For(spot);
                Assert.All(house.Seats, seat => AreFound(from, house.PositionOf(seat)));
            }
        },
        cases: 40);

    private static void AreFound(FullSpotModel from, Point3 hands)
    {
        DiffractedPath[] all = Found(from, hands, 0);
        if (all.Length == 0)
        {
            return;
        }

        double nearest = KnifeEdge.LeastDistanceWavelengths * OneLink.WavelengthMetres;
        Assert.All(all, path => Assert.True(
            from.Console.DistanceTo(path.FirstPlace) > nearest && path.LastPlace.DistanceTo(hands) > nearest));

        double strongest = all.Max(path => path.Power), least = strongest / 20;
        DiffractedPath[] kept = Found(from, hands, least);
        Assert.Equal(all.Sum(path => path.Power), kept.Sum(path => path.Power), all.Length * least); // each left out or faded
        Assert.All(all.Where(path => path.Power > strongest / 2), path =>
            Assert.Contains(kept, other => other.First == path.First && other.Last == path.Last
                && Math.Abs(other.Power - path.Power) < 1e-3 * path.Power)); // of those with a share in it, the weakest are left out
    }

    private static DiffractedPath[] Found(FullSpotModel from, Point3 hands, double least)
    {
        var found = new DiffractedPath[DiffractedPaths.Most];
        int count = from.Finder<DiffractedPaths>().To(new LinkEnds(from.Console, hands, null, false), least, new TraceBuffer(), found);
        return found[..count];
    }
}
