using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Materials;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Tests.Links;
using LinkMargin.Engine.Wavefront;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>
/// What straight lines meet in small houses against a brute-force search (<see cref="BruteForceLine"/>), and the direct model's
/// loss against free space and the table losses of what that search finds.
/// </summary>
public sealed class CrossingsTests
{
    private const int Houses = 150;

    // Coordinates of some 10 m carry a rounding of 2e-15 m, which a line that grazes a surface at 1e-4 stretches to 1e-11.
    private const double SameMetres = 1e-9;

    // The arc cosine of a number near 1 makes 1e-6 degrees of its rounding.
    private const double SameDegrees = 1e-5;

    private const double SameDb = 1e-9;

    [Fact]
    public void A_line_meets_what_trying_every_surface_finds_in_the_same_order()
    {
        int crossings = 0;
        foreach ((House house, Point3 from, Point3 to) in Lines())
        {
            IReadOnlyList<Crossing> ours = DirectLinks.Path(Scene.Compile(house), from, to).Crossings;
            IReadOnlyList<Crossing> expected = BruteForceLine.Crossings(house, from, to);
            Assert.Equal(expected.Select(Reported), ours.Select(Reported));
            foreach ((Crossing own, Crossing other) in ours.Zip(expected))
            {
                Assert.Equal(other.DistanceMetres, own.DistanceMetres, SameMetres);
                Assert.Equal(other.IncidenceDegrees, own.IncidenceDegrees, SameDegrees);
                Assert.Equal(other.Share, own.Share, SameMetres);
            }

            crossings += ours.Count;
        }

        // Otherwise the houses are too empty to show anything.
        Assert.True(crossings > 10 * Houses, $"{crossings} crossings");

        static (ObstacleKind, string, string, int) Reported(Crossing c) => (c.Kind, c.Name, c.Material.Name, c.LevelIndex);
    }

    [Fact]
    public void The_direct_model_is_free_space_and_the_table_losses_of_what_is_met()
    {
        foreach ((House house, Point3 from, Point3 to) in Lines())
        {
            var scene = Scene.Compile(house);

            // Recommendation ITU-R P.525-4, equation (3), with c = 299 792 458 m/s.
            double wavelength = 299_792_458 / (1e6 * Band.Bluetooth.Equivalent.Megahertz);
            double expected = (20 * Math.Log10(4 * Math.PI * Distance(from, to) / wavelength))
                + BruteForceLine.Crossings(house, from, to).Sum(c => c.Share * c.Material.LossDb);
            Assert.Equal(expected, LinkEvaluation.PathLossDb(scene, from, to, new TraceBuffer()), SameDb);
        }
    }

    private static double Distance(Point3 one, Point3 other) =>
        Math.Sqrt(Math.Pow(one.X - other.X, 2) + Math.Pow(one.Y - other.Y, 2) + Math.Pow(one.Z - other.Z, 2));

    private static IEnumerable<(House House, Point3 From, Point3 To)> Lines() =>
        from seed in Enumerable.Range(0, Houses)
        let house = new RandomSmallHouse(seed).Make()
        from spot in house.Spots
        from seat in house.Seats
        select (house, house.PositionOf(spot), house.PositionOf(seat));
}
