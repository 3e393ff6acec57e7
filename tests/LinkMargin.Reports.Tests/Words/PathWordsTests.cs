using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Reports.Words;

namespace LinkMargin.Reports.Tests.Words;

public sealed class PathWordsTests
{
    private static readonly House House = SampleHouse.House;

    [Theory]
    [InlineData(TurnKind.Wall, "games den | outside", "reflected by wall 'games den | outside'")]
    [InlineData(TurnKind.Wall, "party wall", "reflected by 'party wall'")]
    [InlineData(TurnKind.Fixture, "equipment rack", "reflected by 'equipment rack'")]
    [InlineData(TurnKind.Floor, "den", "reflected by the floor of den")]
    [InlineData(TurnKind.Ceiling, "den", "reflected by the ceiling of den")]
    [InlineData(TurnKind.Opening, "den door", "through den door")]
    [InlineData(TurnKind.WallEnd, "spine", "diffracted at the end of wall 'spine'")]
    [InlineData(TurnKind.WallCorner, "spine", "diffracted at the corner of wall 'spine'")]
    [InlineData(TurnKind.FixtureCorner, "rack", "diffracted at 'rack'")]
    [InlineData(TurnKind.StairVoid, "den", "through the stair void above den")]
    public void A_turn_says_what_it_meets(TurnKind kind, string name, string words)
    {
        PathKind path = kind is TurnKind.Opening or TurnKind.WallEnd or TurnKind.WallCorner or TurnKind.FixtureCorner or TurnKind.StairVoid
            ? PathKind.Diffracted : PathKind.Reflected;

        Assert.Equal(words, PathWords.Of(Way(path, new PathTurn(kind, name, 0, 1)), House, House.Seats[0]));
    }

    [Fact]
    public void Turns_are_reported_in_their_order() => Assert.Equal(
        "through den door, then diffracted at the end of wall 'spine'",
        PathWords.Of(
            Way(PathKind.Diffracted, new PathTurn(TurnKind.Opening, "den door", 0, 1), new PathTurn(TurnKind.WallEnd, "spine", 0, 2)),
            House,
            House.Seats[0]));

    [Fact]
    public void A_diffracted_path_without_an_edge_of_its_own_bends_round_all_others() =>
        Assert.Equal("around edges farther from the direct path", PathWords.Of(Way(PathKind.Diffracted), House, House.Seats[0]));

    [Fact]
    public void A_diffuse_field_is_that_of_the_seats_room_or_else_its_level()
    {
        Seat lost = House.Seats[0] with { Plan = new Point2(50, 50) };

        Assert.Equal("diffuse field in games den", PathWords.Of(Way(PathKind.Diffuse), House, House.Seats[0]));
        Assert.Equal("diffuse field on den", PathWords.Of(Way(PathKind.Diffuse), House, lost));
    }

    [Theory]
    [InlineData(ObstacleKind.Wall, "spine", "wall spine")]
    [InlineData(ObstacleKind.Wall, "party wall", "party wall")]
    [InlineData(ObstacleKind.Opening, "cupboard door", "cupboard door")]
    [InlineData(ObstacleKind.Opening, "window south of den", "window south of den")]
    [InlineData(ObstacleKind.Opening, "serving", "opening serving")]
    [InlineData(ObstacleKind.Fixture, "rack", "fixture rack")]
    [InlineData(ObstacleKind.Player, "player at sofa", "player at sofa")]
    [InlineData(ObstacleKind.FloorLayer, "timber-joist-225", "floor above den")]
    [InlineData(ObstacleKind.Joists, "timber-joist-225", "joists above den")]
    public void An_obstacle_says_what_it_is_once(ObstacleKind kind, string name, string words) => Assert.Equal(
        words, PathWords.Of(new Crossing(kind, name, new Material("stuff", 1, 1, "made for tests"), 0, 0, 1, 1), House));

    private static PathBudget Way(PathKind kind, params PathTurn[] turns) =>
        new(new TracedPath(kind, [default, default], 1, []), 0, [], 60) { Bases = [], Turns = turns };
}
