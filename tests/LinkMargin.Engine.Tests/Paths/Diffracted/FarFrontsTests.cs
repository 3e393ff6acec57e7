using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Paths.Diffracted;

/// <summary>What bends round edges beyond the usual reach of a front, behind a wall that nothing passes.</summary>
public sealed class FarFrontsTests
{
    private static readonly Point3 Console = new(0, 0, 1), Hands = new(6, 0, 1);

    [Theory]
    [InlineData(1.5)]
    [InlineData(2)]
    [InlineData(2.5)]
    public void It_is_a_knife_edge_at_its_distance_from_the_line(double asideMetres)
    {
        // In the middle of the line R1 is √(λ·d)/2. A shut window of air has edges and no paths round them.
        double v = Math.Sqrt(2) * asideMetres / (Math.Sqrt(OneLink.WavelengthMetres * 6) / 2);
        Assert.InRange(v, FrontReach.Usual.End, FrontReach.Far.End - 2);
        PathBudget far = Far(OneLink.Of(SimpleHouse.OfWalls(WithWindow(asideMetres, isOpen: false)), Console, Hands))!;
        double faded = -Decibels.FromPowerRatio(1 - FrontReach.Far.Apart(v));

        // What floor and ceiling reflect bends round the edge as well, and adds up to 2 dB.
        Assert.InRange(OneLink.ExcessDb(far) - (KnifeEdge.LossDb(v) + faded), -2, 0.1);
    }

    [Fact]
    public void It_brings_hardly_more_than_the_paths_round_the_same_edge()
    {
        LinkBudget open = OneLink.Of(SimpleHouse.OfWalls(WithWindow(2, isOpen: true)), Console, Hands);
        LinkBudget shut = OneLink.Of(SimpleHouse.OfWalls(WithWindow(2, isOpen: false)), Console, Hands);
        double round = Power(open, path => path.Turns.Count > 0), all = Power(open, _ => true), far = Power(shut, _ => true);
        Assert.True(round > 0.5 * far);
        Assert.InRange(all, round, 0.75 * (round + far));
    }

    [Fact]
    public void It_is_left_out_where_anything_else_arrives()
    {
        Wall passed = WithWindow(2, isOpen: false) with { Material = SimpleHouse.Material("board", 20) };
        Assert.Null(Far(OneLink.Of(SimpleHouse.OfWalls(passed), Console, Hands)));
    }

    [Fact]
    public void It_takes_the_place_of_the_usual_front_by_degrees()
    {
        double before = FrontReach.FarShare(1e-2, 1);
        Assert.Equal(0, before);
        for (double db = -25; db >= -36; db -= 0.1)
        {
            double share = FrontReach.FarShare(Decibels.ToPowerRatio(db), 1);
            Assert.InRange(share - before, 0, 0.02);
            before = share;
        }

        Assert.Equal(1, before);
        Assert.Equal(1, FrontReach.FarShare(0, 1));
    }

    private static PathBudget? Far(LinkBudget budget) =>
        budget.Paths.SingleOrDefault(path => path.Path.Kind == PathKind.Diffracted && path.Turns.Count == 0);

    private static double Power(LinkBudget budget, Func<PathBudget, bool> isMeant) => budget.Paths
        .Where(path => path.Path.Kind == PathKind.Diffracted && isMeant(path))
        .Sum(path => Decibels.ToPowerRatio(path.BodyDb - path.LossDb));

    // A wall from far to far halfway that nothing passes, with a window of air from the line outwards.
    private static Wall WithWindow(double asideMetres, bool isOpen) => new("wall", new Point2(3, -20), new Point2(3, 20), 0, SimpleHouse.HeightMetres, OneLink.Opaque)
    {
        Openings = [new Opening("window", OpeningKind.Door, 20 + asideMetres, 17, 0, SimpleHouse.HeightMetres, SimpleHouse.Material("air", 0), isOpen)],
    };
}
