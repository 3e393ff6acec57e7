using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Links;
using Xunit.Abstractions;

namespace LinkMargin.Engine.Tests.Judges;

/// <summary>A straight line along a wall, with the wall's reflection, against the field of both waves (<see cref="TwoRayField"/>).</summary>
public sealed class TwoRayTests(ITestOutputHelper output)
{
    private const double HalfLengthMetres = 60;

    // What the model may differ by: it reads tables over the angle, and takes the window's phase for that of its middle with its slopes.
    private const double SameDb = 0.5;

    // What is weaker than this against free space is as good as nothing beside all other paths of a link.
    private const double LeastDb = -25;

    // Loss head on by the slab formula, dB, thickness, and the row of the Recommendation.
    private static readonly Dictionary<string, Material> Walls = new[]
    {
        Slab("concrete", 11.484, 0.15, new Dielectric(5.24, 0, 0.0462, 0.7822)),
        Slab("brick", 3.476, 0.102, new Dielectric(3.91, 0, 0.0238, 0.16)),
        Slab("plasterboard", 1.104, 0.0127, new Dielectric(2.73, 0, 0.0085, 0.9395)),
        Slab("glass", 1.946, 0.006, new Dielectric(6.31, 0, 0.0036, 1.3394)),
    }.ToDictionary(wall => wall.Name);

    [Fact]
    public void Along_a_wall_the_direct_path_and_the_reflection_are_the_sum_of_two_waves()
    {
        var failed = new List<string>();
        foreach ((string wall, double first, double second, double along) in Links())
        {
            double judged = Decibels.FromPowerRatio(TwoRayField.PowerRatio(Walls[wall], first, second, along, Deviation));
            double model = Decibels.FromPowerRatio(PowerRatio(Walls[wall], first, second, along));
            string text = $"{wall} {first} and {second} m from it, {along} m along: {model:F2} dB, two waves {judged:F2} dB";
            output.WriteLine(text);
            if (Math.Abs(Math.Max(model, LeastDb) - Math.Max(judged, LeastDb)) > SameDb)
            {
                failed.Add(text);
            }
        }

        Assert.Empty(failed);
    }

    private static IEnumerable<(string Wall, double First, double Second, double Along)> Links()
    {
        foreach (string wall in Walls.Keys)
        {
            foreach (double along in new[] { 1.0, 2, 3.5, 6 })
            {
                foreach ((double first, double second) in new[]
                {
                    (0.02, 0.02), (0.1, 0.1), (0.2, 0.2), (0.05, 0.05), (0.4, 0.4), (0.02, 0.1), (0.05, 0.3), (0.1, 0.6), (0.02, 1.0),
                })
                {
                    yield return (wall, first, second, along);
                }
            }
        }
    }

    // With the wall's end where nothing of it reflects, the end alone stands beside the line.
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.1)]
    [InlineData(0.25)]
    public void A_free_edge_beside_the_line_is_a_knife_edge(double besideMetres)
    {
        // Square to the line in its middle, from its end on.
        House house = SimpleHouse.Of(new Level("level", 0, 12)
        {
            Walls = [new Wall("wall", new Point2(1.5, -HalfLengthMetres), new Point2(1.5, -besideMetres), 0, 12, OneLink.Opaque)],
        });
        double v = ExactKnifeEdge.Parameter(-besideMetres, 1.5, 1.5, OneLink.WavelengthMetres);
        PathBudget path = OneLink.Direct(OneLink.Of(house, new Point3(0, 0, 6), new Point3(3, 0, 6)));
        Assert.Equal(0, path.SurfacesDb, 1e-9);
        Assert.Equal(KnifeEdge.LossDb(v), OneLink.ExcessDb(path), 0.1);
    }

    // Far from the surface the powers of both add, as of paths that have nothing to do with each other.
    [Theory]
    [InlineData(0.7, 0.7, 2)]
    [InlineData(0.05, 3, 0.1)]
    [InlineData(1.5, 1, 4)]
    public void Far_from_a_wall_or_before_it_nothing_interferes(double first, double second, double along)
    {
        LinkBudget budget = OneLink.Of(Along(Walls["concrete"], -HalfLengthMetres, HalfLengthMetres), new Point3(0, first, 6), new Point3(along, second, 6));
        Assert.All(budget.Paths, path => Assert.Equal(0, path.SurfacesDb, 0.05));
    }

    // Nothing passes either of two walls that join without a gap, however near the surface of the one both ends are.
    [Theory]
    [InlineData(0.02, 0.02)]
    [InlineData(0.1, 0.2)]
    [InlineData(0.3, 0.2)]
    [InlineData(1.2, 0.1)]
    public void No_way_opens_along_a_wall_round_another_that_stands_against_it(double first, double second)
    {
        House house = SimpleHouse.Of(new Level("level", 0, 12)
        {
            Walls =
            [
                new Wall("along", new Point2(-HalfLengthMetres, 0), new Point2(HalfLengthMetres, 0), 0, 12, OneLink.Opaque),
                new Wall("across", new Point2(2, 0), new Point2(2, HalfLengthMetres), 0, 12, OneLink.Opaque),
            ],
        });
        Assert.InRange(OneLink.DirectDb(house, new Point3(0, first, 6), new Point3(2.4, second, 6)), 110, 130);
    }

    // The window of GrazingWindow, as its doc states it.
    private static double Deviation(double heightMetres) => Math.Max(0.035, heightMetres / 3);

    private static double PowerRatio(Material wall, double first, double second, double along)
    {
        LinkBudget budget = OneLink.Of(Along(wall, -HalfLengthMetres, HalfLengthMetres), new Point3(0, first, 6), new Point3(along, second, 6));
        double power = budget.Paths
            .Where(path => path.Path.Kind == PathKind.Direct || path.Turns is [{ Kind: TurnKind.Wall }])
            .Sum(path => Decibels.ToPowerRatio(path.BodyDb - path.LossDb));
        return power / Decibels.ToPowerRatio(-FreeSpaceLoss.Db(double.Hypot(along, first - second), Band.Bluetooth.Equivalent));
    }

    // A storey so high that floor and ceiling play no part.
    private static House Along(Material wall, double from, double to) =>
        SimpleHouse.Of(new Level("level", 0, 12) { Walls = [new Wall("wall", new Point2(from, 0), new Point2(to, 0), 0, 12, wall)] });

    private static Material Slab(string name, double lossDb, double thicknessMetres, Dielectric substance) =>
        new(name, lossDb, 0, "Recommendation ITU-R P.2040-3, Table 3") { ThicknessMetres = thicknessMetres, Dielectric = substance };
}
