using LinkMargin.Engine.Decisions.Edits;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Decisions.Edits;

public sealed class HouseEditTests
{
    private static readonly Material Board = new("board", 3, 1, "invented for tests");

    public static TheoryData<string, HouseEdit> OfNothing => new()
    {
        { "door or window 'none'", new SetOpening("none", null, true) },
        { "fixture 'none'", new RemoveFixture("none") },
        { "wall 'none'", new SetWallMaterial("none", null, Board) },
        { "spot 'none'", new MoveSpot("none", 0, default, 1) },
        { "seat 'none'", new MoveSeat("none", 0, default, 1) },
        { "seat 'none'", new TurnSeat("none", 90) },
        { "seat 'none'", new RemoveSeat("none") },
        { "hollow fixture 'box'", new OpenFixtureSide("box", BoxSides.North) }, // which is solid
        { "hollow fixture 'none'", new SwapFixtureSide("none", BoxSides.North, Board) },
    };

    [Theory]
    [MemberData(nameof(OfNothing))]
    public void An_edit_of_what_is_not_there_is_refused(string what, HouseEdit edit)
    {
        ArgumentNullException.ThrowIfNull(edit);
        Assert.Contains(what, Assert.Throws<ArgumentException>(() => edit.ApplyTo(House)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_house_that_is_edited_stays_as_it_was()
    {
        House after = new MoveSeat("seat", 0, new Point2(1, 1), 0.5).ApplyTo(House);
        Assert.Equal(new Point2(3, 1), House.Seats[0].Plan);
        Assert.Equal(new Point2(1, 1), after.Seats[0].Plan);
    }

    [Fact]
    public void A_seat_that_looks_at_a_fixture_turns_to_it_and_one_that_looks_one_way_does_not()
    {
        var move = new MoveSeat("seat", 0, new Point2(1, 1), 0.5);
        Assert.Equal(90, move.ApplyTo(House).Seats[0].FacingDegrees!.Value, 1e-12);
        Assert.Equal(180, move.ApplyTo(new TurnSeat("seat", 180).ApplyTo(House)).Seats[0].FacingDegrees);
        Assert.Equal(30, move.ApplyTo(new RemoveFixture("box").ApplyTo(With(House.Seats[0] with { FacingDegrees = 30 }))).Seats[0].FacingDegrees);
    }

    [Theory]
    [InlineData(BoxSides.West)]
    [InlineData(BoxSides.East)]
    [InlineData(BoxSides.South)]
    [InlineData(BoxSides.North)]
    [InlineData(BoxSides.Top)]
    [InlineData(BoxSides.Bottom)]
    public void A_swapped_side_has_a_panel_of_its_own_and_the_others_keep_theirs(BoxSides side)
    {
        var rack = new Fixture("rack", 0, new Point2(2, 2), 0.8, 0.6, 30, 0.1, 1.1, Board) { IsShell = true, OpenSides = BoxSides.Top | BoxSides.North };
        House after = new SwapFixtureSide("rack", side, Board with { Name = "pane" }).ApplyTo(House with { Fixtures = [rack] });
        Fixture swapped = Assert.Single(after.Fixtures);
        BoxSides[] sides = [BoxSides.West, BoxSides.East, BoxSides.South, BoxSides.North, BoxSides.Top, BoxSides.Bottom];
        Assert.Equal(
            sides.Select(one => one == side ? "pane" : rack.PanelOn(one)?.Name), sides.Select(one => swapped.PanelOn(one)?.Name));
        Assert.Equal(
            sides.Select(one => one == side ? null : swapped.PanelOn(one)?.Name),
            sides.Select(one => new OpenFixtureSide("rack", side).ApplyTo(after).Fixtures[0].PanelOn(one)?.Name));
    }

    private static House House => With(new Seat("seat", 0, new Point2(3, 1), 0.7, 135, 15) { Faces = "box" });

    private static House With(Seat seat) => SimpleHouse.OfWalls() with
    {
        Fixtures = [new Fixture("box", 0, new Point2(1, 3), 0.2, 0.2, 0, 0, 1, Board)],
        Seats = [seat],
    };
}
