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

    // Of the many ways round only the best to each bend is kept, and the best from the other end may be another. Of 3000 houses
    // the sum of all paths differed by 0.7 dB at worst where it was below 85 dB, and by more than 0.1 dB in 11. Far beyond what any
    // radio hears ways round may be all there is, and differ by 20 dB.
    private const double WaysDb = 1;
    private const double HeardDb = 85;

    private static readonly PathKind[] ExactlyAlike = [PathKind.Direct, PathKind.Diffuse];

    [Fact, Law]
    public void Exchanging_the_ends_of_a_link_changes_nothing() =>
        RoomedHouse.Any.Where(house => house.Spots.Count > 0 && house.Seats.Count > 0).ForAll(
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
                Assert.Equal(Math.Min(LossDb(there), HeardDb), Math.Min(LossDb(back), HeardDb), WaysDb);
            },
            cases: 60);

    private static double LossDb(IReadOnlyList<PathBudget> paths, PathKind? kind = null) => -Decibels.FromPowerRatio(paths
        .Where(path => kind is null || path.Path.Kind == kind)
        .Sum(path => Decibels.ToPowerRatio(path.BodyDb - path.LossDb)) + double.Epsilon);
}
