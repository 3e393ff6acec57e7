using System.Numerics;
using CsCheck;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Quantities;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Paths thrown back once, against images and the reflection of the thing they meet.</summary>
public sealed class ReflectionTests
{
    private const double FarMetres = 30;

    // Conductivity 1e7 S/m is metal in Recommendation ITU-R P.2040-3, Table 3: what it keeps shows only in the fourth digit.
    private const double ConductorDb = 0.03;

    private static readonly Material Metal = new("metal", 100, 0, "ITU-R P.2040-3, Table 3, metal")
    {
        ThicknessMetres = 0.001,
        Layers = [new Layer(new Dielectric(1, 0, 1e7, 0), "metal", 0.001, 0)],
    };

    [Fact, Law]
    public void A_floor_throws_back_what_its_slab_does_at_that_angle() =>
        Gen.Select(Gen.Double[0.3, 2], Gen.Double[0.3, 2], Gen.Double[2, 8]).ForAll(
            (height, hands, run) =>
            {
                PathBudget path = ReflectedBy(
                    OneLink.Of(SimpleHouse.OfWalls(), new Point3(0, 0, height), new Point3(run, 0, hands)), TurnKind.Floor);
                double length = double.Hypot(run, height + hands), incidence = Math.Atan2(run, height + hands);
                Assert.Equal(length, path.Path.LengthMetres, 1e-9);
                Assert.Equal(double.RadiansToDegrees(incidence), path.Turns[0].IncidenceDegrees!.Value, 1e-6);
                Assert.Equal(FreeSpaceLoss.Db(length, Band.Bluetooth.Equivalent), path.FreeSpaceDb, 1e-9);

                // The model reads a table over the angle, and some channels of the band.
                Assert.Equal(-10 * Math.Log10(ConcreteReflectance(incidence)), OneLink.ExcessDb(path) - path.SurfacesDb, 0.1);
            },
            cases: 10);

    [Fact, Law]
    public void A_perfect_conductor_is_a_second_console_in_its_image() =>
        Gen.Select(Gen.Double[0.3, 3], Gen.Double[0.3, 3], Gen.Double[1, 5]).ForAll(
            (first, second, run) =>
            {
                PathBudget path = ReflectedBy(
                    OneLink.Of(SimpleHouse.OfWalls(Along(-FarMetres, FarMetres)), new Point3(0, first, 1), new Point3(run, second, 1.3)),
                    TurnKind.Wall);
                double image = double.Hypot(double.Hypot(run, first + second), 0.3);
                Assert.Equal(FreeSpaceLoss.Db(image, Band.Bluetooth.Equivalent), path.LossDb - path.BodyDb - path.SurfacesDb, ConductorDb);
            },
            cases: 15);

    // A half plane of mirror is a knife edge: a quarter of the power where it ends at the place of reflection, and J(v) beyond.
    [Theory]
    [InlineData(0)]
    [InlineData(0.6)]
    [InlineData(1.2)]
    [InlineData(-0.4)]
    [InlineData(-2)]
    public void The_end_of_a_mirror_is_a_knife_edge(double v)
    {
        // 2 m before the mirror each and 3 m apart: the unfolded path is 5 m long and strikes at 0.8 of a right angle's cosine.
        const double Cosine = 0.8;
        double height = v / Math.Sqrt(2 / OneLink.WavelengthMetres * (2 / 2.5));
        double end = 1.5 - (height / Cosine);
        PathBudget path = ReflectedBy(
            OneLink.Of(SimpleHouse.OfWalls(Along(-FarMetres, end)), new Point3(0, 2, 1), new Point3(3, 2, 1)), TurnKind.Wall);
        Assert.Equal(KnifeEdge.LossDb(v), path.ReflectionDb, ConductorDb);
        if (v == 0)
        {
            Assert.Equal(0.25, Math.Pow(10, -path.ReflectionDb / 10), 0.002);
        }
    }

    [Fact]
    public void Over_places_a_conductor_and_the_straight_line_have_the_mean_of_both_waves_in_step()
    {
        // Two rays of one frequency: |exp(−jkd)/d − exp(−jkr)/r|², the image with its sign turned, over 1.5 m of places.
        var model = new LinkModel(SimpleHouse.OfWalls(Along(-FarMetres, FarMetres)));
        double k = 2 * Math.PI / OneLink.WavelengthMetres, waves = 0, powers = 0;
        for (int i = 0; i <= 300; i++)
        {
            Point3 console = new(0, 1.5, 1), hands = new(3, 1 + (0.005 * i), 1), image = new(0, -1.5, 1);
            double d = console.DistanceTo(hands), r = image.DistanceTo(hands);
            waves += Math.Pow((Complex.Exp(new Complex(0, -k * d)) / d - (Complex.Exp(new Complex(0, -k * r)) / r)).Magnitude, 2);
            if (i % 20 != 0)
            {
                continue;
            }

            LinkBudget budget = OneLink.Of(model, console, hands);
            powers += new[] { OneLink.Direct(budget), ReflectedBy(budget, TurnKind.Wall) }
                .Sum(path => Decibels.ToPowerRatio(path.BodyDb - path.LossDb));
        }

        double isotropic = Math.Pow(OneLink.WavelengthMetres / (4 * Math.PI), 2);
        Assert.Equal(10 * Math.Log10(waves * isotropic / 301), 10 * Math.Log10(powers / 16), 0.3);
    }

    [Fact, Law]
    public void A_wall_that_touches_a_mirror_lets_nothing_slip_by_at_its_foot() =>
        Gen.Select(Gen.Double[0.5, 2.5], Gen.Double[0.5, 2.5], Gen.Double[-0.2, 0.2], Gen.Double[0.5, 8], Gen.Bool, Gen.Double[-40, 40]).ForAll(
            (first, second, aside, lossDb, goesThrough, tilt) =>
            {
                // The partition stands on the mirror where the path is thrown back, or near it.
                double place = (4 * first / (first + second)) + aside;
                var upwards = new Point2(Math.Tan(double.DegreesToRadians(tilt)) * 0.2, 1);
                var foot = new Point2(place, 0);
                Wall partition = SimpleHouse.FullWall(
                    "partition", goesThrough ? foot - (FarMetres * upwards) : foot, foot + (FarMetres * upwards), lossDb);
                LinkBudget budget = OneLink.Of(
                    SimpleHouse.OfWalls(Along(-FarMetres, FarMetres), partition), new Point3(0, first, 1), new Point3(4, second, 1));
                PathBudget path = Assert.Single(budget.Paths, p => p.Turns is [{ Kind: TurnKind.Wall, Name: "mirror" }]);
                double least = lossDb + path.ReflectionDb;
                Assert.True(OneLink.ExcessDb(path) >= least - 1e-9, $"{OneLink.ExcessDb(path)} dB past a partition of {lossDb} dB");
            },
            cases: 12);

    [Fact, Law]
    public void A_wall_on_a_floor_lets_nothing_slip_by_at_its_foot() =>
        Gen.Select(Gen.Double[0.4, 1.8], Gen.Double[0.4, 1.8], Gen.Double[-0.3, 0.3], Gen.Double[0.5, 8]).ForAll(
            (first, second, aside, lossDb) =>
            {
                double place = (4 * first / (first + second)) + aside;
                LinkBudget budget = OneLink.Of(
                    SimpleHouse.OfWalls(SimpleHouse.FullWall(
                        "partition", new Point2(place, -FarMetres), new Point2(place, FarMetres), lossDb)),
                    new Point3(0, 0, first),
                    new Point3(4, 0, second));
                foreach (TurnKind plate in new[] { TurnKind.Floor, TurnKind.Ceiling })
                {
                    Assert.All(
                        budget.Paths.Where(path => path.Turns is [PathTurn turn] && turn.Kind == plate),
                        path => Assert.True(OneLink.ExcessDb(path) - path.SurfacesDb >= lossDb + path.ReflectionDb - 1e-9));
                }

                Assert.Contains(budget.Paths, path => path.Turns is [{ Kind: TurnKind.Floor }]);
            },
            cases: 10);

    [Fact, Law]
    public void Every_reflection_is_the_same_from_either_end() =>
        RoomedHouse.Any.ForAll(
            house =>
            {
                var model = new LinkModel(house);
                foreach (Spot spot in house.Spots.Where(spot => IsInTheOpen(model, house.PositionOf(spot))))
                {
                    foreach (Seat seat in house.Seats.Where(seat => IsInTheOpen(model, house.PositionOf(seat)))
                        .Select(seat => seat with { FacingDegrees = null }))
                    {
                        LinkBudget there = LinkEvaluation.Budget(model, spot, seat);
                        LinkBudget back = LinkEvaluation.Budget(
                            model,
                            new Spot("other end", seat.LevelIndex, seat.Plan, seat.HandsMetres),
                            new Seat("other end", spot.LevelIndex, spot.Plan, spot.HeightMetres, null, 15));
                        AssertAllIn(there, back);
                        AssertAllIn(back, there);
                    }
                }
            },
            cases: 12);

    // Nobody plays, and no console stands, inside a solid thing.
    private static bool IsInTheOpen(LinkModel model, Point3 at) =>
        model.House.Fixtures.Zip(model.Scene.Boxes).All(pair => pair.First.IsShell || pair.Second.DepthOf(at.Plan) < 0);

    // Weak reflections fade out against the straight line and the diffuse field, of which the other end may have more.
    private static void AssertAllIn(LinkBudget budget, LinkBudget others) => Assert.All(
        budget.Paths.Where(path => path.Path.Kind == PathKind.Reflected && IsStrong(path, budget) && IsStrong(path, others)),
        path => Assert.True(
            others.Paths.Any(other => other.Path.Kind == PathKind.Reflected
                && (other.Turns[0].Kind, other.Turns[0].Name) == (path.Turns[0].Kind, path.Turns[0].Name)
                && Math.Abs(other.Path.LengthMetres - path.Path.LengthMetres) < 1e-9
                && Math.Abs(OneLink.ExcessDb(other) - OneLink.ExcessDb(path)) < 1e-6),
            $"{path.LossDb} dB by {path.Turns[0]} is not among those of the other end"));

    private static bool IsStrong(PathBudget path, LinkBudget budget)
    {
        double rest = budget.Paths.Where(p => p.Path.Kind is PathKind.Direct or PathKind.Diffuse)
            .Sum(p => Decibels.ToPowerRatio(-p.LossDb));
        return Decibels.ToPowerRatio(-path.LossDb) > 0.03 * rest;
    }

    private static PathBudget ReflectedBy(LinkBudget budget, TurnKind kind) =>
        Assert.Single(budget.Paths, path => path.Turns is [PathTurn turn] && turn.Kind == kind);

    private static Wall Along(double from, double to) =>
        new("mirror", new Point2(from, 0), new Point2(to, 0), 0, SimpleHouse.HeightMetres, Metal);

    // The ground slab: 150 mm of concrete, ε' = 5.24, σ = 0.0462·f^0.7822 (Recommendation ITU-R P.2040-3, Table 3), one slab in
    // air by section 2.2.2: R = r·(1 − e^(−j2q))/(1 − r²·e^(−j2q)), the power mean of both polarisations and all channels.
    private static double ConcreteReflectance(double incidence)
    {
        (double sin, double cos) = Math.SinCos(incidence);
        double sum = 0;
        foreach (Frequency channel in Band.Bluetooth.Channels)
        {
            double gigahertz = channel.Megahertz / 1000;
            var eta = new Complex(5.24, -17.98 * 0.0462 * Math.Pow(gigahertz, 0.7822) / gigahertz);
            Complex s = Complex.Sqrt(eta - (sin * sin));
            Complex turn = Complex.Exp(new Complex(0, -2) * (2 * Math.PI * 0.15 / channel.WavelengthMetres) * s);
            foreach (Complex r in new[] { (cos - s) / (cos + s), ((eta * cos) - s) / ((eta * cos) + s) })
            {
                sum += Math.Pow((r * (1 - turn) / (1 - (r * r * turn))).Magnitude, 2) / 2;
            }
        }

        return sum / Band.Bluetooth.Channels.Count;
    }
}
