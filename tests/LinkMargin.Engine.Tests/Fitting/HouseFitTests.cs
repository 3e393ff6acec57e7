using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Measuring;
using LinkMargin.Engine.Tests.Houses;
using LinkMargin.Engine.Uncertainty;

namespace LinkMargin.Engine.Tests.Fitting;

/// <summary>Readings made from a house by its own model, and what the fit makes of them.</summary>
public sealed class HouseFitTests
{
    private const double OffsetDbm = 3;

    private static readonly Spreads Some = new(4, 0.2, 3, 0.05, 20, 10, 12);

    [Fact]
    public void A_wall_that_loses_more_than_its_table_says_is_found()
    {
        House table = Halved(6), real = Halved(11);
        HouseFit fit = HouseFit.Of(new LinkModel(table), Some, MeasurementsIn(real));
        FittedMaterial board = fit.Study.Fit.Materials.Single(m => m.Name == "board");
        Assert.InRange(board.LossDb, 9, 12);
        Assert.True(board.SpreadDb < 0.7 * board.TableSpreadDb);
        Assert.Equal(board.LossDb, fit.Losses.ApplyTo(table).Levels[0].Walls[0].Material.LossDb, 1e-9);
    }

    [Fact]
    public void Sent_the_other_way_round_a_measurement_says_the_same()
    {
        House table = Halved(6), real = Halved(9);
        IReadOnlyList<Measurement> there = MeasurementsIn(real);
        Measurement[] back = [.. there.Select(measurement => measurement with { Transmitter = measurement.Receiver, Receiver = measurement.Transmitter })];
        double one = HouseFit.Of(new LinkModel(table), Some, there).Study.Fit.ShiftsDb[0];
        Assert.Equal(one, HouseFit.Of(new LinkModel(table), Some, back).Study.Fit.ShiftsDb[0], 0.2);
    }

    [Fact]
    public void What_is_read_on_a_link_is_believed_of_that_link_as_far_as_a_measurement_goes()
    {
        // In an empty field, all but one link as the model says; that one 6 dB weaker. Of what a reading shows apart from the
        // model, 16 of 16 + 9 is the model's: 4 dB is what it leaves out, 3 dB is the reading's own noise.
        House house = SimpleHouse.OfWalls();
        Measurement[] measurements = [.. MeasurementsIn(house, 20, ModelDepth.Direct)];
        measurements[7] = measurements[7] with { LevelDbm = measurements[7].LevelDbm - 6 };
        FittedLosses losses = HouseFit.Of(new LinkModel(house, ModelDepth.Direct), Some, measurements).Losses;
        FittedLink weak = losses.Find(measurements[7].Transmitter.PositionIn(house), measurements[7].Receiver.PositionIn(house))!;
        Assert.Equal(6 * 16 / 25.0, weak.ShiftDb, 0.6);
        Assert.InRange(weak.SpreadDb, 2.4, 2.8);
        Assert.All(losses.Links.Where(link => link != weak), link => Assert.Equal(0, link.ShiftDb, 0.5));
        Assert.Same(weak, losses.Find(measurements[7].Receiver.PositionIn(house), measurements[7].Transmitter.PositionIn(house)));
    }

    [Fact]
    public void A_margin_to_count_on_takes_what_was_read_on_its_link()
    {
        // Nothing else is doubtful here: the normal law's tenth part lies 1.2816 standard deviations below its middle.
        House house = SimpleHouse.OfWalls() with
        {
            Spots = [new Spot("spot", 0, default, 1)],
            Seats = [new Seat("seat", 0, new(6, 0), 1, null, 15)],
            Console = SimpleHouse.Radio with { SpreadDb = 0 },
            Controller = SimpleHouse.Radio with { SpreadDb = 0 },
        };
        var model = new LinkModel(house, ModelDepth.Direct);
        LinkBudget budget = LinkEvaluation.Budget(model, house.Spots[0], house.Seats[0]);
        var fitted = new FittedLosses("house", 1, [], [], (_, _) => 0)
        {
            Links = [new FittedLink(new Point3(6.1, 0, 1), new Point3(0, 0.1, 1), 2.5, 2)],
        };
        var uncertainty = HouseUncertainty.Of(model, house.Spots, house.Seats, new UncertaintyBasis(Some, fitted));
        Assert.Equal(budget.MarginDb - 2.5, uncertainty.With(budget).MedianDb, 1e-3);
        Assert.Equal(budget.MarginDb - 2.5 - (2 * 1.2816), uncertainty.MarginAtConfidenceDb(budget), 1e-3);
    }

    private static House Halved(double lossDb) => SimpleHouse.OfWalls(
        new Wall("wall", new(0, -30), new(0, 30), 0, 2.4, new Material("board", lossDb, 4, "made up")));

    private static IReadOnlyList<Measurement> MeasurementsIn(House real, int count = 12, ModelDepth depth = ModelDepth.Full)
    {
        var model = new LinkModel(real, depth);
        var radio = new Spot("spot", 0, new Point2(-3, 0), 1);
        return
        [
            .. Enumerable.Range(0, count).Select(i =>
            {
                double angle = i * 2.4;

                // Every other one on the transmitter's own side of the wall, so that wall and device are told apart.
                var place = new Point2((i % 2 == 0 ? 1 : -1) * (1 + (0.45 * i)), (2.5 + (0.1 * i)) * Math.Sin(angle));
                double lossDb = LinkEvaluation.Budget(model, radio, new Seat("seat", 0, place, 1, null, 0)).PathLossDb;
                return new Measurement(new MeasurementEnd("spot", 0, radio.Plan, 1), new MeasurementEnd($"place {i}", 0, place, 1), "phone", OffsetDbm - lossDb, true);
            }),
        ];
    }
}
