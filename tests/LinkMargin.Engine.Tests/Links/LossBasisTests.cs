using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Every crossing says what its loss rests on.</summary>
public sealed class LossBasisTests
{
    private static readonly Layer[] Layers = [new Layer(new Dielectric(2.73, 0, 0.0085, 0.9395), "plasterboard", 0.0125, 0)];

    public static TheoryData<LossBasis, Material> Walls => new()
    {
        { LossBasis.Listed, SimpleHouse.Material("plain", 5) },
        { LossBasis.HeadOnAndLayers, SimpleHouse.Material("layered", 5) with { Layers = Layers } },
        { LossBasis.MeanAndLayers, SimpleHouse.Material("fitted", 5) with { Layers = Layers, Angle = LossAngle.Mean } },
        { LossBasis.Through, SimpleHouse.Material("metal", 11) with { ThroughDb = 40 } },
    };

    [Theory]
    [MemberData(nameof(Walls))]
    public void By_every_way_a_wall_says_what_its_loss_rests_on(LossBasis basis, Material material)
    {
        PathBudget line = StraightLine(OfWall(material), ModelDepth.Full);

        Assert.Equal([basis], line.Bases);
    }

    [Theory]
    [MemberData(nameof(Walls))]
    public void By_the_straight_line_it_is_always_the_listed_loss(LossBasis basis, Material material)
    {
        PathBudget line = StraightLine(OfWall(material), ModelDepth.Direct);

        Assert.Equal([LossBasis.Listed], line.Bases);
        Assert.Equal([material.LossDb], line.CrossingsDb);
        Assert.True(Enum.IsDefined(basis));
    }

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void Joists_count_by_their_share(ModelDepth depth)
    {
        var joists = new Ribs(SimpleHouse.Material("timber", 6), 0.1, 0.2, 0.4);
        var buildUp = new FloorBuildUp("joisted", [new(SimpleHouse.Material("board", 2), 0.02, null), new(null, 0.2, joists)], "invented for tests");
        var below = new Level("below", 0, 2.4) { Above = new FloorAbove(buildUp, new JoistLayout(0, 0.4, null), []) };
        House house = SimpleHouse.Of(below, new Level("over", 2.62, 2.4)) with
        {
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 1, new Point2(1, 1), 0.7, null, 15)],
        };

        PathBudget line = StraightLine(house, depth);

        Assert.Equal(
            line.Path.Crossings.Select(c => c.Kind == ObstacleKind.Joists ? LossBasis.JoistShare : LossBasis.Listed), line.Bases);
        Assert.Contains(LossBasis.JoistShare, line.Bases);
    }

    private static House OfWall(Material material) => SimpleHouse.OfWalls(
        new Wall("wall", new Point2(2, -3), new Point2(2, 3), 0, SimpleHouse.HeightMetres, material)) with
    {
        Spots = [new Spot("spot", 0, default, 1)],
        Seats = [new Seat("seat", 0, new Point2(4, 1), 0.7, null, 15)],
    };

    private static PathBudget StraightLine(House house, ModelDepth depth) => Assert.Single(
        LinkEvaluation.Budget(new LinkModel(house, depth), house.Spots[0], house.Seats[0]).Paths, path => path.Path.Kind == PathKind.Direct);
}
