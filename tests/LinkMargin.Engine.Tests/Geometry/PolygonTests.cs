using CsCheck;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Geometry;

public sealed class PolygonTests
{
    // An L: 4 by 3 with the north-east 2 by 2 cut away.
    private static readonly Polygon Ell = new([new(0, 0), new(4, 0), new(4, 1), new(2, 1), new(2, 3), new(0, 3)]);

    [Fact]
    public void Has_the_area_of_its_parts_whichever_way_it_runs()
    {
        Assert.Equal(8, Ell.AreaSquareMetres, 1e-12);
        Assert.Equal(8, new Polygon(Ell.Corners.Reverse()).AreaSquareMetres, 1e-12);
    }

    [Fact]
    public void Knows_how_far_it_reaches()
    {
        Assert.Equal(new Point2(0, 0), Ell.Least);
        Assert.Equal(new Point2(4, 3), Ell.Greatest);
    }

    [Theory]
    [InlineData(1, 2.5, true)]
    [InlineData(3, 0.5, true)]
    [InlineData(3, 2, false)]
    [InlineData(2.001, 1.001, false)]
    [InlineData(1.999, 1.001, true)]
    [InlineData(-0.001, 1, false)]
    [InlineData(5, 0.5, false)]
    public void Contains_what_lies_inside(double x, double y, bool expected)
    {
        Assert.Equal(expected, Ell.Contains(new Point2(x, y)));
        Assert.Equal(expected, new Polygon(Ell.Corners.Reverse()).Contains(new Point2(x, y)));
    }

    [Fact, Law]
    public void A_point_on_a_shared_edge_belongs_to_one_side_only() =>
        Gen.Double[0.01, 1.99].ForAll(y =>
        {
            Polygon west = new([new(0, 0), new(1, 0), new(1, 2), new(0, 2)]);
            Polygon east = new([new(1, 0), new(2, 0), new(2, 2), new(1, 2)]);
            Assert.NotEqual(west.Contains(new Point2(1, y)), east.Contains(new Point2(1, y)));
        });

    [Theory]
    [InlineData(2, 2, true)] // on an edge
    [InlineData(4, 3, false)] // on no edge, though at the corner of the box round it
    [InlineData(0, 0, true)]
    [InlineData(2.0009, 2, true)]
    [InlineData(2.0011, 2, false)]
    [InlineData(4.0009, 0.5, true)]
    [InlineData(1, 1, false)]
    public void Knows_what_lies_on_its_edges(double x, double y, bool expected) =>
        Assert.Equal(expected, Ell.IsOnEdge(new Point2(x, y), 0.001));

    [Fact]
    public void Refuses_fewer_than_three_corners()
    {
        Assert.Throws<ArgumentException>(() => new Polygon([new(0, 0), new(1, 0)]));
        Assert.Equal(3, new Polygon([new(0, 0), new(1, 0), new(0, 1)]).Corners.Count);
    }
}
