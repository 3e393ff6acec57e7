using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Paths.Diffuse;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>People on other seats stand in the way, and nobody in his own.</summary>
public sealed class OccupiedSeatTests
{
    // A room of 8 m by 5 m: the console in the west at hand height, two seats behind one another on a line that looks at it.
    private static readonly Spot Spot = new("shelf", 0, new Point2(0.5, 2.5), 0.8);
    private static readonly Seat Front = new("front", 0, new Point2(3.5, 2.5), 0.7, 180, 15);
    private static readonly Seat Back = new("back", 0, new Point2(6.5, 2.5), 0.7, 180, 15);
    private static readonly Seat Aside = new("aside", 0, new Point2(6.5, 0.6), 0.7, null, 15);
    private static readonly House House = Make(10);

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void Somebody_on_the_straight_line_lowers_the_level_of_the_seat_behind(ModelDepth depth)
    {
        double empty = LinkEvaluation.Budget(new LinkModel(House, depth), Spot, Back).MarginDb;
        double occupied = LinkEvaluation.Budget(new LinkModel(House, depth, [Front]), Spot, Back).MarginDb;

        Assert.True(occupied < empty - 1, $"{empty} without, {occupied} with somebody in front");
    }

    [Fact]
    public void By_the_straight_line_a_player_counts_once_with_the_loss_that_has_the_way_round_in()
    {
        // From high up in front of the seat the line runs through head and torso.
        Spot high = Spot with { Plan = Front.Plan - new Point2(0.5, 0), HeightMetres = 2.2 };
        Seat low = Back with { Plan = Front.Plan + new Point2(0.62, 0), HandsMetres = 0.3 };

        LinkBudget empty = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct), high, low);
        LinkBudget occupied = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Direct, [Front]), high, low);

        Crossing player = Assert.Single(occupied.Paths[0].Path.Crossings);
        Assert.Equal((ObstacleKind.Player, "player at front"), (player.Kind, player.Name));
        Assert.Equal(empty.PathLossDb + 11, occupied.PathLossDb, 1e-9);
    }

    [Fact]
    public void By_every_way_the_loss_of_a_player_is_that_through_the_body()
    {
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Full, [Front]), Spot, Back);

        PathBudget line = Assert.Single(budget.Paths, path => path.Path.Kind == PathKind.Direct);
        int player = Assert.Single(Enumerable.Range(0, line.Bases.Count), i => line.Path.Crossings[i].Kind == ObstacleKind.Player);
        Assert.Equal(LossBasis.Through, line.Bases[player]);
        Assert.Equal(40, line.CrossingsDb[player], 0.5);
        Assert.True(line.EdgesDb < -15, "what goes round the body is most of what arrives");
    }

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void Nobody_stands_in_the_way_of_his_own_link(ModelDepth depth)
    {
        var without = new LinkModel(House, depth);
        var with = new LinkModel(House, depth, [Front]);

        Assert.Equal(
            LinkEvaluation.Budget(without, Spot, Front).PathLossDb, LinkEvaluation.Budget(with, Spot, Front).PathLossDb);
        Assert.Empty(LinkEvaluation.Budget(with, Spot, Front).Occupied);
    }

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void One_seats_link_sees_all_the_others_whether_asked_for_alone_or_among_all(ModelDepth depth)
    {
        var both = new LinkModel(House, depth, [Front, Back]);

        LinkBudget[] budgets = LinkEvaluation.Budgets(both, Spot, House.Seats);

        Assert.Equal(House.Seats.Select(seat => LinkEvaluation.Budget(both, Spot, seat).MarginDb), budgets.Select(b => b.MarginDb));
        Assert.Equal(
            LinkEvaluation.Budget(new LinkModel(House, depth, [Front]), Spot, Back).MarginDb, budgets[1].MarginDb);
        Assert.Equal(["front"], budgets[1].Occupied.Select(seat => seat.Name));
        Assert.Equal(["front", "back"], budgets[2].Occupied.Select(seat => seat.Name));
        Assert.Equal(budgets.Select(b => b.MarginDb), Ranking.Of(both).Scores[0].Budgets.Select(b => b.MarginDb));
    }

    [Fact]
    public void Occupied_by_nobody_is_not_occupied()
    {
        Assert.Equal(
            LinkEvaluation.Budget(new LinkModel(House), Spot, Back).PathLossDb,
            LinkEvaluation.Budget(new LinkModel(House, ModelDepth.Full, []), Spot, Back).PathLossDb);
    }

    [Fact]
    public void A_seat_that_does_not_say_where_it_faces_has_nobody()
    {
        var model = new LinkModel(House, ModelDepth.Full, [Aside]);

        Assert.Empty(model.Occupied);
        Assert.Equal(
            LinkEvaluation.Budget(new LinkModel(House), Spot, Back).PathLossDb, LinkEvaluation.Budget(model, Spot, Back).PathLossDb);
    }

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void A_cell_of_a_field_sees_everybody(ModelDepth depth)
    {
        var request = new FieldRequest(Spot, 0) { CellMetres = 0.5 };
        Field empty = FieldComputation.Compute(new LinkModel(House, depth), request);
        Field occupied = FieldComputation.Compute(new LinkModel(House, depth, [Front with { Plan = new Point2(3.5, 2.3) }]), request);

        // The cell right behind somebody in front: its centre is at 4.25 m and 2.25 m.
        int behind = (4 * empty.Grid.Columns) + 8;
        Assert.True(occupied.MarginDb[behind] < empty.MarginDb[behind] - 1);
    }

    [Fact]
    public void People_take_from_the_power_that_a_room_with_bright_walls_holds()
    {
        // They scatter some of it as well, so that a place may see more that has been reflected often.
        House bright = Make(AngleTable.MetalLossDb + 10);
        double Held(LinkModel model) =>
            ((FullSpotModel)model.For(Spot)).Finder<DiffusePaths>().Rooms.Shell.Balance.Flux([1])[0];

        Assert.True(Held(new LinkModel(bright, ModelDepth.Full, [Front, Back])) < 0.99 * Held(new LinkModel(bright)));
    }

    private static House Make(double wallsDb)
    {
        Point2[] corners = [new(0, 0), new(8, 0), new(8, 5), new(0, 5)];
        Wall[] walls = [.. corners.Select((c, i) => SimpleHouse.FullWall($"wall {i}", c, corners[(i + 1) % 4], wallsDb))];
        var level = new Level("level", 0, SimpleHouse.HeightMetres) { Walls = walls, Rooms = [new Room("room", new Polygon(corners))] };
        return SimpleHouse.Of(level) with { Spots = [Spot], Seats = [Front, Back, Aside] };
    }
}
