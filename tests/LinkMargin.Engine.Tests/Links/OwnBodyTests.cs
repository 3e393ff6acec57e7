using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Judges;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>What a player's own body takes of the straight line, by where he looks.</summary>
public sealed class OwnBodyTests(ITestOutputHelper output)
{
    private static readonly LinkModel Model = new(SimpleHouse.OfWalls());

    [Fact]
    public void Facing_the_console_costs_nothing_and_turning_away_a_full_shadow()
    {
        Assert.InRange(BodyDb(0), -1e-9, 0.2);
        // Near the hands a body takes more than the 11 dB of one in the middle of a path.
        Assert.InRange(BodyDb(180) - BodyDb(0), 11, 20);
    }

    [Fact]
    public void Turning_away_never_helps_much_and_left_is_as_right()
    {
        double least = 0;
        for (int degrees = 0; degrees <= 180; degrees += 15)
        {
            double here = BodyDb(degrees);
            Assert.True(here >= least - 1, $"{here} dB at {degrees} degrees, {least} dB before"); // 1 dB: edges change places
            least = Math.Max(least, here);
            Assert.Equal(here, BodyDb(-degrees), 1e-9);
        }
    }

    [Fact]
    public void The_shadow_is_that_of_a_finite_screen()
    {
        // The silhouette from behind: shoulders 0.44 m wide from 0.25 m under the hands to 0.35 m over them, a head 0.16 m wide
        // to 0.65 m over them; the console is 6 m away. The chest is 0.24 m deep and its edges stand highest over the line at
        // its face, 0.20 m from the hands. As a screen it has two sides, an underside and, between shoulder and crown, a top.
        double J(double height) => KnifeEdge.LossDb(ExactKnifeEdge.Parameter(height, 6 - 0.20, 0.20, OneLink.WavelengthMetres));
        double shouldersDb = FiniteScreen.MeanLossDb(J(0.22), J(0.22), J(0.25), J(0.35));
        double crownDb = FiniteScreen.MeanLossDb(J(0.22), J(0.22), J(0.25), J(0.65));
        output.WriteLine(FormattableString.Invariant(
            $"own body from behind {BodyDb(180):F2} dB; finite screen {shouldersDb:F2} dB to the shoulders, {crownDb:F2} dB to the crown"));

        // What passes over and beside at once counts once here and twice there: half a decibel for a screen alike.
        Assert.InRange(BodyDb(180), shouldersDb - 0.5, crownDb + 1);
    }

    [Fact]
    public void The_mean_over_facing_is_the_mean_of_the_shares_that_are_left()
    {
        foreach (double offset in new[] { 0, 1.7 })
        {
            double share = Enumerable.Range(0, 72).Average(i => Math.Pow(10, -BodyDb(offset + (5 * i)) / 10));
            Assert.Equal(-10 * Math.Log10(share), BodyDb(null), 1e-6);
        }
    }

    [Fact]
    public void A_path_thrown_back_from_before_the_player_goes_round_his_back()
    {
        // The console behind the player, a mirror before him: the straight line is in his shadow, what is thrown back is not.
        Wall mirror = SimpleHouse.FullWall("mirror", new Point2(8, -20), new Point2(8, 20), 40);
        LinkBudget budget = OneLink.Of(SimpleHouse.OfWalls(mirror), new Point3(1, 0, 1), new Point3(6, 0, 0.9), 0);
        PathBudget reflected = Assert.Single(budget.Paths, path => path.Turns is [{ Name: "mirror" }]);
        Assert.InRange(reflected.BodyDb, -1e-9, 0.2);
        Assert.InRange(OneLink.Direct(budget).BodyDb, 11, 20);
    }

    // The console 6 m to the east, at the height of the hands.
    private static double BodyDb(double? facingDegrees) =>
        OneLink.Direct(OneLink.Of(Model, new Point3(6, 0, 1), new Point3(0, 0, 1), facingDegrees)).BodyDb;
}
