using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>A console where the player was and a player where the console was lose as much between them, the player's body aside.</summary>
public sealed class FullModelReciprocityTests
{
    private const double SameDb = 1e-6;

    // Beyond this, some 20 dB below what any radio hears, the edges of a front cancel down to their rounding.
    private const double RoundingDb = 120;

    // Below this loss no link differs by more than a decibel, and one in a thousand at most by more than a tenth. They differ at all
    // because a body shadows other paths at the other end: of two paths that share their energy the stronger counts, and what is
    // left out as too weak is a share of what the body leaves of the others.
    private const double HeardDb = 110;
    private const double MostDb = 1;
    private const double OftenDb = 0.1;
    private const double SeldomShare = 0.001;

    private static readonly PathKind[] ExactlyAlike = [PathKind.Direct, PathKind.Diffuse];

    [Fact, Law]
    public void Exchanging_the_ends_of_a_link_in_a_house_of_rooms_changes_nothing() =>
        AreAlike(RoomedHouse.Any, [7055647161900877085, 6916803416197266204, 4249005929949022053]);

    [Fact, Law]
    public void Exchanging_the_ends_of_a_link_in_any_house_changes_nothing() => AreAlike(RandomHouse.Any, [5363, 2113, 5595]);

    private static void AreAlike(Gen<House> any, long[] also)
    {
        int links = 0, apart = 0;
        any.Where(house => house.PositionOf(house.Spots[0]) != house.PositionOf(house.Seats[0])).ForAll(
            house =>
            {
                var model = new LinkModel(house);
                Seat seat = house.Seats[0];
                Point3 console = house.PositionOf(house.Spots[0]), hands = house.PositionOf(seat);
                var swapped = new Spot(
                    "swapped", seat.LevelIndex, hands.Plan, hands.Z - house.Levels[seat.LevelIndex].ElevationMetres);
                IReadOnlyList<PathBudget> there = model.For(house.Spots[0]).Paths(hands, null);
                IReadOnlyList<PathBudget> back = model.For(swapped).Paths(console, null);
                Assert.All(ExactlyAlike, kind => Assert.Equal(Math.Min(LossDb(there, kind), RoundingDb), Math.Min(LossDb(back, kind), RoundingDb), SameDb));
                double one = Math.Min(LossDb(there), HeardDb), other = Math.Min(LossDb(back), HeardDb);
                Assert.Equal(one, other, MostDb);
                links += Math.Min(one, other) < HeardDb ? 1 : 0;
                apart += Math.Abs(one - other) > OftenDb ? 1 : 0;
            },
            cases: 300,
            also: also);
        Assert.InRange(apart, 0, Math.Ceiling(SeldomShare * links));
    }

    private static double LossDb(IReadOnlyList<PathBudget> paths, PathKind? kind = null) => -Decibels.FromPowerRatio(paths
        .Where(path => kind is null || path.Path.Kind == kind)
        .Sum(path => Decibels.ToPowerRatio(path.BodyDb - path.LossDb)) + double.Epsilon);
}
