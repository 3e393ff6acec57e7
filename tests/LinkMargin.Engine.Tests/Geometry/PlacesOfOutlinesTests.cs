using CsCheck;
using LinkMargin.Engine.Geometry;

namespace LinkMargin.Engine.Tests.Geometry;

public sealed class PlacesOfOutlinesTests
{
    private const double MarginMetres = 0.3;

    private static readonly Gen<Point2> Corner = Gen.Select(Gen.Double[-20, 20], Gen.Double[-5, 5], (x, y) => new Point2(x, y));

    private static readonly Gen<Polygon> Outline = Corner.Array[3].Select(corners => new Polygon(corners));

    [Fact, Law]
    public void No_outline_that_a_place_lies_in_or_close_to_is_missed() =>
        Gen.Select(Outline.Array[0, 30], Corner.Array[20]).ForAll((outlines, places) =>
        {
            var near = new PlacesOfOutlines(outlines, MarginMetres);
            foreach (Point2 place in places)
            {
                int[] found = near.Near(place).ToArray();
                Assert.Equal(found.Distinct().Order(), found);
                for (int i = 0; i < outlines.Length; i++)
                {
                    Assert.True(outlines[i].DepthOf(place) < -MarginMetres || found.Contains(i));
                }
            }
        });

    [Fact]
    public void Of_many_rooms_few_are_near_a_place()
    {
        Polygon[] rooms = [.. Enumerable.Range(0, 400).Select(i => Square(3 * (i % 20), 3 * (i / 20)))];
        var near = new PlacesOfOutlines(rooms, MarginMetres);
        Assert.All(rooms, room => Assert.InRange(near.Near(room.Corners[0] + new Point2(1.5, 1.5)).Length, 1, 9));
    }

    private static Polygon Square(double x, double y) => new([new(x, y), new(x + 3, y), new(x + 3, y + 3), new(x, y + 3)]);
}
