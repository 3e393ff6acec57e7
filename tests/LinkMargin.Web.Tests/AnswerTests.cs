using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Runs;
using LinkMargin.Files.Changes;
using LinkMargin.Web.Drawing;
using LinkMargin.Web.Protocol;

namespace LinkMargin.Web.Tests;

/// <summary>What the server works out for its pages.</summary>
public sealed class AnswerTests
{
    [Fact]
    public async Task Cables_are_those_that_the_planner_gives_each_spot()
    {
        await using ServedHouse served = await ServedHouse.OfDemo();
        House house = served.Tried.Current.Now.House;
        CablesMessage cables = await served.Server.Services.Cables.Of(served.Tried.Current);
        var planner = new RunPlanner(house);
        Assert.Equal(house.Spots.Count, cables.Spots.Count);
        foreach (SpotCables one in cables.Spots)
        {
            SpotRuns runs = planner.Plan(house.Spots.Single(spot => spot.Name == one.Spot));
            Assert.Equal((runs.NewRuns, runs.Holes, runs.IsComplete), (one.NewRuns, one.Holes, one.IsComplete));
            Assert.True(one.Runs.Count >= runs.Runs.Count);
        }


        // Nowhere pass as many seats with fewer runs in this house.
        Assert.Empty(cables.Note);
    }

    [Fact]
    public async Task Every_change_of_something_on_a_plan_has_its_place_there()
    {
        await using ServedHouse served = await ServedHouse.Of(ServedHouse.Small);
        House house = served.Tried.Current.Now.House;
        Assert.Equal((0, 4.0, 2.5), Rounded(new HouseChange(ChangeKinds.SetOpening) { Name = "study door", Level = 0 }));
        Assert.Equal((0, 4.0, 2.5), Rounded(new HouseChange(ChangeKinds.WallMaterial) { Name = "lounge | study", Level = 0 }));
        Assert.Equal((0, 3.5, 4.45), Rounded(new HouseChange(ChangeKinds.RemoveFixture) { Name = "bookcase" }));
        Assert.Equal((0, 5.5, 2.5), Rounded(new HouseChange(ChangeKinds.TurnSeat) { Name = "chair", Degrees = 90 }));
        Assert.Equal((0, 1.0, 2.0), Rounded(new HouseChange(ChangeKinds.MoveSpot) { Name = "shelf", Level = 0, X = 1, Y = 2 }));
        Assert.Null(ChangePlace.Of(house, new HouseChange(ChangeKinds.Controller) { Name = "controller-class-1" }));

        (int, double, double) Rounded(HouseChange change) => ChangePlace.Of(house, change) is var (level, plan)
            ? (level, Math.Round(plan.X, 3), Math.Round(plan.Y, 3))
            : default;
    }
}
