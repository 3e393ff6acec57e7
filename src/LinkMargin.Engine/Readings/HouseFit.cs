using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Readings;

/// <summary>A house fitted to readings taken in it, with everything to be said of the fit.</summary>
public sealed class HouseFit
{
    private readonly double modelDb;

    private HouseFit(House house, IReadOnlyList<Reading> readings, ReadLinks links, FitStudy study, double modelDb) =>
        (House, Readings, Links, Study, this.modelDb) = (house, readings, links, study, modelDb);

    /// <summary>The house, as the tables say.</summary>
    public House House { get; }

    /// <summary>The readings, in the order of the fit's residuals.</summary>
    public IReadOnlyList<Reading> Readings { get; }

    /// <summary>The links they were taken on.</summary>
    public ReadLinks Links { get; }

    /// <summary>The fit, seen from all sides.</summary>
    public FitStudy Study { get; }

    /// <summary>What the fit has to say of the house.</summary>
    public FittedLosses Losses => FittedLosses.Of(
        Study.Fit,
        House,
        [
            .. Enumerable.Range(0, Readings.Count)
                .Where(i => Readings[i].IsHeard && !Study.Fit.Residuals[i].LooksBad)
                .GroupBy(i => Links.OfReading[i])
                .Select(LinkOf),
        ]);

    /// <summary>Length of a reading's link, metres.</summary>
    public double DistanceMetres(int reading) => Links.DistancesMetres[Links.OfReading[reading]];

    /// <summary>Fits.</summary>
    /// <param name="model">The house, ready.</param>
    /// <param name="spreads">How far figures may be out.</param>
    /// <param name="readings">What was read in it, repeated readings put together.</param>
    public static HouseFit Of(LinkModel model, Spreads spreads, IReadOnlyList<Reading> readings)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(spreads);
        ArgumentNullException.ThrowIfNull(readings);
        FitProblem problem = ProblemOf(model, spreads, readings, out ReadLinks links);
        return new HouseFit(model.House, readings, links, FitStudy.Of(problem, links.DistancesMetres, model.Scene.Band.Equivalent), spreads.ModelDb);
    }

    // What the model leaves out on a link is normal about 0; a reading tells it but for the reading's own noise and what is
    // not known of the device's level. What it also shares with the fitted materials is left out, which makes it less sure.
    private FittedLink LinkOf(IEnumerable<int> readings)
    {
        int[] on = [.. readings];
        double weights = 0, sum = 0, deviceDb = double.PositiveInfinity;
        foreach (int i in on)
        {
            FitResidual residual = Study.Fit.Residuals[i];
            double ownDb2 = Math.Max(1e-6, (residual.Reading.NoiseDb * residual.Reading.NoiseDb) - (modelDb * modelDb));
            double weight = (1 - residual.ProbabilityBad) / ownDb2;
            weights += weight;
            sum += weight * residual.ResidualDb;
            deviceDb = Math.Min(deviceDb, Study.Fit.Devices[residual.Reading.Device].SpreadDb);
        }

        double known = modelDb * modelDb * weights / (1 + (modelDb * modelDb * weights)); // of the model's variance
        double shiftDb = weights > 0 ? -known * sum / weights : 0;
        Reading first = Readings[on[0]];
        return new FittedLink(
            first.Transmitter.PositionIn(House),
            first.Receiver.PositionIn(House),
            shiftDb,
            Math.Min(modelDb, Math.Sqrt((modelDb * modelDb * (1 - known)) + (known * known * deviceDb * deviceDb))));
    }

    private static FitProblem ProblemOf(LinkModel model, Spreads spreads, IReadOnlyList<Reading> readings, out ReadLinks links)
    {
        IReadOnlyList<MaterialPrior> rows = HousePriors.Of(model.House, spreads);
        ReadLinks read = links = ReadLinks.Of(model, rows, readings);
        string[] devices = [.. readings.Select(reading => reading.Devices).Distinct(StringComparer.Ordinal)];
        Material[] materials = [.. HouseFabric.Of(model.House).DistinctBy(material => material.TableRow)];
        double[] wholeSpreads = [.. materials.Select(material => material.SpreadDb / material.Scale)];
        double[] nothing = new double[rows.Count], gradient = new double[rows.Count];
        return new FitProblem(
            read,
            rows,
            [.. devices.Select(name => new DevicePrior(name, spreads.DeviceOffsetDbm, spreads.DeviceDb))],
            [.. readings.Select(AsFitted)],
            new BadReadings(spreads.BadReadingShare, spreads.BadReadingDb));

        FitReading AsFitted(Reading reading, int i)
        {
            read.PathLossDb(read.OfReading[i], nothing, gradient);
            return new FitReading(
                read.OfReading[i],
                Array.IndexOf(devices, reading.Devices),
                reading.LevelDbm,
                reading.IsHeard,
                ReadingNoise.Db(spreads, reading.SampleCount, gradient, wholeSpreads));
        }
    }
}
