using CsCheck;
using LinkMargin.Engine.Decisions;
using LinkMargin.Engine.Fields;
using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Tests.Judges;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Uncertainty;

/// <summary>Draws of a house: what they must be whatever the house.</summary>
public sealed class HouseUncertaintyTests
{
    private static readonly Spreads Some = new(4, 0.2, 3, 0.05, 20, 10, 12);

    [Fact, Law]
    public void Where_spreads_are_small_the_draws_spread_as_the_slopes_say() => RoomedHouse.Any.ForAll(
        house =>
        {
            House sure = HouseFabric.Replace(house, m => m with { SpreadDb = Math.Min(0.3, m.LossDb / 5) });
            var model = new LinkModel(sure);
            var basis = new UncertaintyBasis(Some with { ModelDb = 0.05 });
            var stored = StoredPaths.Of(model, sure.Spots, sure.Seats);
            var draws = new LinkDraws(stored, model.Radios, basis);
            Assert.All(stored.Links, link =>
            {
                double analytic = FirstOrderSpread.Db(stored, link, model.Radios, basis);
                Assert.Equal(analytic, draws.Of(link).SpreadDb, 0.05 * analytic);
            });
        },
        cases: 15);

    [Fact, Law]
    public void A_link_is_as_sure_whichever_others_are_asked_about_and_in_whatever_order() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            var basis = new UncertaintyBasis(Some);
            var all = HouseUncertainty.Of(model, house.Spots, house.Seats, basis);
            var alone = HouseUncertainty.Of(model, [house.Spots[^1]], [house.Seats[^1]], basis);
            LinkBudget budget = LinkEvaluation.Budget(model, house.Spots[^1], house.Seats[^1]);
            Assert.Equal(all.MarginAtConfidenceDb(budget), alone.MarginAtConfidenceDb(budget), 1e-9);
            Assert.Equal(all.ProbabilityPasses(budget), alone.ProbabilityPasses(budget), 1e-9);
        },
        cases: 10);

    [Fact, Law]
    public void The_margin_to_count_on_falls_as_one_wants_to_be_surer_and_what_is_met_is_likely() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, new UncertaintyBasis(Some));
            LinkBudget[] budgets = LinkEvaluation.Budgets(model, house.Spots[0], house.Seats);
            Assert.All(budgets, budget =>
            {
                DrawnMargins margins = uncertainty.With(budget);
                Assert.True(margins.ExceededDb(0.9) < margins.ExceededDb(0.5));
                Assert.Equal(0.9, margins.ProbabilityOf(margins.ExceededDb(0.9)), 1e-6);
                Assert.Equal(uncertainty.AtConfidence.Passes(budget), uncertainty.ProbabilityPasses(budget) >= uncertainty.Confidence);
            });
            Assert.True(uncertainty.ProbabilityAllPass(budgets) <= budgets.Min(uncertainty.ProbabilityPasses) + 1e-12);
            Assert.Equal(uncertainty.ProbabilityPasses(budgets[0]), uncertainty.ProbabilityAllPass([budgets[0]]), 1e-12);
        },
        cases: 10);

    [Fact, Law]
    public void Where_nothing_can_be_out_the_margin_itself_is_counted_on() => RoomedHouse.Any.ForAll(
        house =>
        {
            House sure = HouseFabric.Replace(house, m => m with { SpreadDb = 0 }) with
            {
                Console = SimpleHouse.Radio with { SpreadDb = 0 },
                Controller = SimpleHouse.Radio with { SpreadDb = 0 },
            };
            var model = new LinkModel(sure);
            var uncertainty = HouseUncertainty.Of(model, sure.Spots, sure.Seats, new UncertaintyBasis(Some with { ModelDb = 0 }));
            Assert.All(
                LinkEvaluation.Budgets(model, sure.Spots[0], sure.Seats), budget => Assert.Equal(budget.MarginDb, uncertainty.MarginAtConfidenceDb(budget), 1e-5));
        },
        cases: 10);

    [Fact]
    public void With_nothing_in_the_way_only_radios_and_what_the_model_leaves_out_count()
    {
        // The normal law's tenth part lies 1.2816 standard deviations below its middle; 3, 4 and 12 make 13.
        House house = SimpleHouse.OfWalls() with
        {
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new(6, 0), 1, null, 15)],
            Console = SimpleHouse.Radio with { SpreadDb = 3 },
            Controller = SimpleHouse.Radio with { SpreadDb = 4 },
        };
        var model = new LinkModel(house, ModelDepth.Direct);
        LinkBudget budget = LinkEvaluation.Budget(model, house.Spots[0], house.Seats[0]);
        var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, new UncertaintyBasis(Some with { ModelDb = 12 }));
        Assert.Equal(budget.MarginDb, uncertainty.With(budget).MedianDb, 0.1);
        Assert.Equal(budget.MarginDb - (13 * 1.2816), uncertainty.MarginAtConfidenceDb(budget), 0.2);
    }

    [Fact]
    public void No_loss_goes_below_nothing_and_all_depths_of_a_row_shift_together()
    {
        Material thin = SimpleHouse.Material("thin", 1) with { SpreadDb = 4 };
        Material thick = thin with { Name = "thick", LossDb = 3, SpreadDb = 12, ScaledFrom = "thin", Scale = 3 };
        LossParameter[] parameters = [new(0, null), new(1, null), new(0, 7), new(1, 8)];
        var basis = new UncertaintyBasis(Some);
        var draws = new HouseDraws(parameters, [thin, thick], [1.8, 5.4], basis, new LatinHypercubeSampler(basis));
        bool areDrawn = false;
        for (int d = 0; d < 1000; d++)
        {
            double[] shifts = [.. Enumerable.Range(0, parameters.Length).Select(p => draws.ShiftsDb(p)[d])];
            Assert.True(shifts[0] >= -1 && shifts[0] + shifts[2] >= -1 - 1e-12);
            Assert.True(shifts[1] + shifts[3] >= -3 - 1e-12);
            Assert.Equal(3 * shifts[0], shifts[1], 1e-9);
            areDrawn |= shifts[0] > 1 && shifts[2] != 0;
        }

        Assert.True(areDrawn);
    }

    [Fact]
    public void A_cavity_that_is_not_as_deep_everywhere_makes_a_link_less_sure()
    {
        // The one wall in the way adds its own spread to the model's, as variances; its slope is 1 at a loss this small.
        StoredPaths exact = ThroughACavity(0), loose = ThroughACavity(0.02);
        Assert.Equal(0, exact.ToleranceSpreadsDb.Max(), 1e-9);
        double tolerance = loose.ToleranceSpreadsDb.Max();
        Assert.True(tolerance > 0.3);
        var basis = new UncertaintyBasis(Some with { ModelDb = 1 });
        double before = SpreadOf(exact, basis), after = SpreadOf(loose, basis);
        Assert.InRange((after * after) - (before * before), 0.2 * tolerance * tolerance, 1.2 * tolerance * tolerance);

        static double SpreadOf(StoredPaths stored, UncertaintyBasis basis) =>
            new LinkDraws(stored, new RadioPair(SimpleHouse.Radio, SimpleHouse.Radio), basis).Of(stored.Links[0]).SpreadDb;
    }

    private static StoredPaths ThroughACavity(double toleranceMetres)
    {
        var board = new Dielectric(2.73, 0, 0.0085, 0.9395); // P.2040-3, Table 3, plasterboard
        var wall = new Material("boards with a cavity", 3, 0, "made up")
        {
            Layers = [new(board, "board", 0.02, 0), new(null, "air", 0.05, toleranceMetres), new(board, "board", 0.02, 0)],
        };
        House house = SimpleHouse.OfWalls(new Wall("wall", new(0, -20), new(0, 20), 0, 2.4, wall)) with
        {
            Spots = [new Spot("spot", 0, new(-3, 0), 1)],
            Seats = [new Seat("seat", 0, new(3, 0), 1, null, 15)],
        };
        return StoredPaths.Of(new LinkModel(house), house.Spots, house.Seats);
    }

    [Fact]
    public void What_a_fit_left_out_between_two_rows_stays_so_in_the_draws()
    {
        FittedMaterial[] fitted = [new("one", 5, 4, 0, 2), new("other", 5, 4, 0, 2)];
        Material[] materials = [.. fitted.Select(m => SimpleHouse.Material(m.Name, 50) with { SpreadDb = 4, FittedSpreadDb = 2 })];
        var basis = new UncertaintyBasis(Some, new FittedLosses("house", 8, fitted, [], (_, _) => -0.8));
        var shared = new SharedLosses(materials, basis);
        double[][] drawn = [.. materials.Select((_, row) => shared.Drawn(new LatinHypercubeSampler(1000, 1), row))];
        Assert.Equal([2, 2], shared.SpreadsDb);
        double own = drawn[0].Average(z => z * z), other = drawn[1].Average(z => z * z);
        Assert.Equal(1, own, 0.12); // three standard errors of a thousand draws; below, four
        Assert.Equal(-0.8, drawn[0].Zip(drawn[1], (a, b) => a * b).Average() / Math.Sqrt(own * other), 0.05);
    }

    [Fact]
    public void Draws_of_one_unknown_are_normal_and_those_of_two_have_nothing_in_common()
    {
        var draws = new LatinHypercubeSampler(1000, 3);
        double[] one = draws.Of("one"), other = draws.Of("other");
        Assert.Equal(one, new LatinHypercubeSampler(1000, 3).Of("one"));
        Assert.NotEqual(one, new LatinHypercubeSampler(1000, 4).Of("one"));
        Assert.Equal(0, one.Average(), 1e-9);
        Assert.Equal(1, one.Average(z => z * z), 0.01);
        Assert.Equal(0, one.Zip(other, (a, b) => a * b).Average(), 0.1); // 3 standard errors
    }

    [Fact, Law]
    public void A_map_counts_on_what_a_point_counts_on_and_is_the_same_each_time() => RoomedHouse.Any.ForAll(
        house =>
        {
            var model = new LinkModel(house);
            var basis = new UncertaintyBasis(Some);
            Field plain = FieldComputation.Compute(model, new FieldRequest(house.Spots[0], 0) { CellMetres = 0.5 });
            Field counted = FieldAtConfidence.Of(model, plain, basis, 0.9);
            Assert.Equal(counted.MarginDb, FieldAtConfidence.Of(model, plain, basis, 0.9).MarginDb);
            int cell = Enumerable.Range(0, plain.Grid.Count).First(c => double.IsFinite(plain.MarginDb[c]));
            var seat = new Seat("there", 0, plain.Grid.CentreOf(cell % plain.Grid.Columns, cell / plain.Grid.Columns), plain.HandsMetres, null, 15);
            var uncertainty = HouseUncertainty.Of(model, [house.Spots[0]], [seat], basis);
            Assert.Equal(uncertainty.MarginAtConfidenceDb(LinkEvaluation.Budget(model, house.Spots[0], seat)), counted.MarginDb[cell], 1e-5);
            Assert.All(plain.MarginDb.Zip(counted.MarginDb), pair => Assert.Equal(double.IsNaN(pair.First), double.IsNaN(pair.Second)));
        },
        cases: 6);

    [Fact, Law]
    public void The_best_spot_is_the_same_as_if_all_were_drawn() => RoomedHouse.Any.ForAll(
        house =>
        {
            // The house's own spot, and one beside each seat.
            Spot[] spots = [.. house.Spots, .. house.Seats.Select((seat, i) => new Spot($"near {i}", seat.LevelIndex, seat.Plan + new Point2(0.3, 0.4), 1.2))];
            House more = house with { Spots = spots };
            var model = new LinkModel(more, ModelDepth.Direct);
            var basis = new UncertaintyBasis(Some) { Draws = 200 };
            SpotScore all = Ranking.Of(model, HouseUncertainty.Of(model, spots, more.Seats, basis).AtConfidence).Scores[0], best = new JudgeAtConfidence(basis).BestSpot(model)!;
            Assert.Equal(all.Spot, best.Spot);
            Assert.Equal(all.WeakestHeadroomDb, best.WeakestHeadroomDb, 1e-9);
        },
        cases: 20);

    [Fact]
    public void A_ranking_by_the_margin_to_count_on_says_so()
    {
        House house = SimpleHouse.OfWalls() with
        {
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new(6, 0), 1, null, 15)],
        };
        var model = new LinkModel(house, ModelDepth.Direct);
        var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, new UncertaintyBasis(Some));
        var ranking = Ranking.Of(model, uncertainty.AtConfidence);
        Assert.Equal("margin to count on", ranking.Scores[0].By.Words);
        Assert.Equal(uncertainty.MarginAtConfidenceDb(ranking.Scores[0].Weakest) - 15, ranking.Scores[0].WeakestHeadroomDb, 1e-12);
    }
}
