using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Paths;
using LinkMargin.Engine.Scenes;
using LinkMargin.Engine.Propagation;
using LinkMargin.Engine.Tests.Houses;

namespace LinkMargin.Engine.Tests.Links;

/// <summary>Every number that leaves the engine is a number.</summary>
public sealed class FiniteTests
{
    private const int Houses = 200;

    [Theory, Law]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void Budgets_and_rankings_hold_only_finite_numbers(ModelDepth depth) =>
        RandomHouse.Any.ForAll(
            house =>
            {
                Ranking ranking = Ranking.Of(new LinkModel(house, depth));
                Assert.All(ranking.Scores.SelectMany(score => score.Budgets).SelectMany(NumbersOf), AssertFinite);
                Assert.All(ranking.Scores, score => AssertFinite(score.MeanHeadroomDb));
            },
            cases: depth == ModelDepth.Direct ? Houses : Houses / 4);

    [Fact, Law]
    public void Lines_aimed_at_edges_and_lines_of_no_length_have_finite_losses_and_angles() =>
        (from house in RandomHouse.Any
         from lines in RandomLine.In(house).Array[20]
         select (house, lines))
        .ForAll(
            (house, lines) =>
            {
                var scene = Scene.Compile(house);
                foreach (Line line in lines.SelectMany(l => new[] { l, new Line(l.From, l.From) }))
                {
                    AssertFinite(LineLoss.Of(scene, line));
                    Assert.All(
                        DirectLinks.Path(scene, line.From, line.To).Crossings.SelectMany(NumbersOf), AssertFinite);
                }
            },
            cases: Houses);

    [Fact, Law]
    public void Fields_hold_finite_numbers_in_rooms_and_none_outside() =>
        (from house in RandomHouse.Any
         from cell in Gen.Double[0.4, 2]
         from hands in RandomPlace.Height
         select (house, cell, hands))
        .ForAll(
            (house, cell, hands) =>
            {
                FieldRequest request = new(house.Spots[0], house.Levels.Count - 1) { CellMetres = cell, HandsMetres = hands };
                Assert.All(FieldComputation.Compute(new LinkModel(house, ModelDepth.Direct), request).MarginDb, AssertFinite);
            },
            cases: Houses);

    [Theory]
    [InlineData(ModelDepth.Direct)]
    [InlineData(ModelDepth.Full)]
    public void The_same_place_for_both_ends_is_a_defined_answer(ModelDepth depth) =>
        Assert.All([0, double.Epsilon, 1e-200, 1e-160, 1e-12, 0.9e-8, 1.1e-8, 1e-6], apart => AssertDefined(depth, apart));

    [Fact]
    public void Ends_that_lie_in_the_floor_are_a_defined_answer()
    {
        // A joist bay's sheet lies at its middle, 2.6 m; an end may lie on it to the last bit.
        Material timber = SimpleHouse.Material("timber", 8);
        Level lower = new("lower", 0, 2.4)
        {
            Above = new FloorAbove(
                new FloorBuildUp("floor", [new(null, 0.4, new Ribs(timber, 0.05, 0.2, 0.4))], "test"),
                new JoistLayout(0, 0.4, 0.1),
                []),
        };
        var scene = Scene.Compile(SimpleHouse.Of(lower, new Level("upper", 2.8, 2.4)));
        foreach (double z in new[] { 2.6, Math.BitIncrement(2.6), Math.BitDecrement(2.6), (2.8 + 2.4) / 2 })
        {
            foreach (double away in new[] { 0, 0.5, 1.6, -0.9 })
            {
                AssertFinite(LineLoss.Of(scene, new Line(new Point3(0, 0.1, z), new Point3(3, 1, z + away))));
                AssertFinite(LineLoss.Of(scene, new Line(new Point3(3, 1, z + away), new Point3(0, 0.1, z))));
            }
        }
    }

    private static void AssertDefined(ModelDepth depth, double apart)
    {
        // In the middle of a shut door, inside a bulk fixture and a shell, on a wall's end.
        Material water = SimpleHouse.Material("water", 40) with { Form = LossForm.Bulk, ThicknessMetres = 0.1 };
        Fixture box = new("box", 0, default, 2, 1, 30, 0.5, 1.5, water);
        House house = SimpleHouse.OfWalls(SimpleHouse.FullWall("w", default, new Point2(3, 0), 5)) with
        {
            Fixtures = [box, box with { IsShell = true }],
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new Point2(apart, apart), 1, null, 15)],
        };
        LinkBudget budget = LinkEvaluation.Budget(new LinkModel(house, depth), house.Spots[0], house.Seats[0]);
        Assert.All(NumbersOf(budget), AssertFinite);
        if (depth == ModelDepth.Direct)
        {
            Assert.InRange(budget.PathLossDb, 0, 5.001);
        }

        Assert.Equal(90 - PolarisationMismatch.MeanDb - budget.PathLossDb, budget.MarginDb, 1e-9);
    }

    private static IEnumerable<double> NumbersOf(LinkBudget budget) =>
    [
        budget.DistanceMetres, budget.Frequency.Megahertz, budget.PathLossDb, budget.MarginDb, budget.HeadroomDb,
        .. budget.Directions.SelectMany(d => new[] { d.ReceivedDbm, d.MarginDb, d.SensitivityDbm, d.TransmitDbm }),
        .. budget.Paths.SelectMany(p => p.CrossingsDb),
        .. budget.Paths.SelectMany(p => new[] { p.EdgesDb, p.ReflectionDb, p.SurfacesDb, p.DiffractionDb, p.BodyDb, p.DiffuseDb }),
        .. budget.Paths.SelectMany(p => new[] { p.FreeSpaceDb, p.LossDb, p.Path.LengthMetres }),
        .. budget.Paths.SelectMany(p => p.Path.Crossings).SelectMany(NumbersOf),
    ];

    private static IEnumerable<double> NumbersOf(Crossing crossing)
    {
        Assert.InRange(crossing.IncidenceDegrees, 0, 90);
        Assert.True(crossing.Share > 0);
        Assert.True(crossing.DistanceMetres >= 0);
        return [crossing.IncidenceDegrees, crossing.Share, crossing.DistanceMetres];
    }

    private static void AssertFinite(double value) => Assert.True(double.IsFinite(value), $"{value} is not finite.");
}
