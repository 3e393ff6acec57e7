using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>What a player's own body takes of the straight line, by where he looks.</summary>
public sealed class OwnBodyTests(ITestOutputHelper output)
{
    private static readonly LinkModel Model = new(SimpleHouse.OfWalls());

    // What a body reflects adds to a path from before it: less than 1 dB in the mean over its standing wave. The series gives hands 0.18 m
    // behind a torso 10.0 dB (0.12 m radius) to 11.8 dB (0.15 m) of shadow; a little comes over the head.
    [Fact]
    public void Facing_the_console_costs_nothing_and_turning_away_a_full_shadow()
    {
        Assert.InRange(BodyDb(0), -1, 0);
        Assert.InRange(BodyDb(180), 9.5, 12);
    }

    // Beside the shadow the series has crests of a decibel, as an edge has.
    [Fact]
    public void Only_looking_away_is_in_the_shadow_and_left_is_as_right()
    {
        double before = double.NegativeInfinity;
        for (int degrees = 0; degrees <= 180; degrees += 5)
        {
            double here = BodyDb(degrees);
            output.WriteLine(FormattableString.Invariant($"turned by {degrees} degrees: {here:F2} dB"));
            Assert.Equal(here, BodyDb(-degrees), 1e-9);
            if (degrees <= 130)
            {
                Assert.InRange(here, -1.5, 0.5);
            }
            else
            {
                Assert.True(here >= before, $"{here} dB at {degrees} degrees, {before} dB before");
                before = here;
            }
        }
    }

    [Fact]
    public void The_mean_over_facing_is_the_mean_of_the_shares_that_are_left()
    {
        foreach (double offset in new[] { 0, 1.7 })
        {
            double share = Enumerable.Range(0, 72).Average(i => Math.Pow(10, -BodyDb(offset + (5 * i)) / 10));
            Assert.Equal(-10 * Math.Log10(share), BodyDb(null), 0.005); // a table that is linear between its steps
        }
    }

    [Fact]
    public void A_path_thrown_back_from_before_the_player_goes_round_his_back()
    {
        // The console behind the player, a mirror before him: the straight line is in his shadow, what is thrown back is not.
        Wall mirror = SimpleHouse.FullWall("mirror", new Point2(8, -20), new Point2(8, 20), 40);
        LinkBudget budget = OneLink.Of(SimpleHouse.OfWalls(mirror), new Point3(1, 0, 1), new Point3(6, 0, 0.9), 0);
        PathBudget reflected = Assert.Single(budget.Paths, path => path.Turns is [{ Name: "mirror" }]);
        Assert.InRange(reflected.BodyDb, -1, 0);
        Assert.InRange(OneLink.Direct(budget).BodyDb, 9.5, 12);
    }

    // The console 6 m to the east, at the height of the hands.
    private static double BodyDb(double? facingDegrees) =>
        OneLink.Direct(OneLink.Of(Model, new Point3(6, 0, 1), new Point3(0, 0, 1), facingDegrees)).BodyDb;
}
