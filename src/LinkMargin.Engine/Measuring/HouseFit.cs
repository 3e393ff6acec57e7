using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Propagation;

namespace LinkMargin.Engine.Measuring;

/// <summary>A house fitted to measurements taken in it, with the checks of the fit.</summary>
public sealed class HouseFit
{
    private readonly double modelDb;

    private HouseFit(House house, IReadOnlyList<Measurement> measurements, MeasuredLinks links, FitStudy study, double modelDb) =>
        (House, Measurements, Links, Study, this.modelDb) = (house, measurements, links, study, modelDb);

    /// <summary>The house, as the tables say.</summary>
    public House House { get; }

    /// <summary>The measurements, in the order of the fit's residuals.</summary>
    public IReadOnlyList<Measurement> Measurements { get; }

    /// <summary>The links they were taken on.</summary>
    public MeasuredLinks Links { get; }

    /// <summary>The fit and its checks.</summary>
    public FitStudy Study { get; }

    /// <summary>What the fit says about the house.</summary>
    public FittedLosses Losses => FittedLosses.Of(
        Study.Fit,
        House,
        [
            .. Enumerable.Range(0, Measurements.Count)
                .Where(i => Measurements[i].IsHeard && !Study.Fit.Residuals[i].LooksBad)
                .GroupBy(i => Links.OfMeasurement[i])
                .Select(LinkOf),
        ]);

    /// <summary>Length of a measurement's link, metres.</summary>
    public double DistanceMetres(int measurement) => Links.DistancesMetres[Links.OfMeasurement[measurement]];

    /// <summary>Fits.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="spreads">How uncertain the figures are.</param>
    /// <param name="measurements">What was measured in it, repeated measurements combined.</param>
    public static HouseFit Of(LinkModel model, Spreads spreads, IReadOnlyList<Measurement> measurements)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(spreads);
        ArgumentNullException.ThrowIfNull(measurements);
        FitProblem problem = ProblemOf(model, spreads, measurements, out MeasuredLinks links);
        double[] freeSpaceDb = [.. links.DistancesMetres.Select(metres => FreeSpaceLoss.Db(metres, model.Scene.Band.Equivalent))];
        return new HouseFit(model.House, measurements, links, FitStudy.Of(problem, links.DistancesMetres, freeSpaceDb), spreads.ModelDb);
    }

    // What the model leaves out on a link is normal about 0. A measurement shows it, apart from the measurement's own noise and the
    // uncertainty of the device's level. Its correlation with the fitted materials is ignored, so the result is less certain.
    private FittedLink LinkOf(IEnumerable<int> measurements)
    {
        int[] on = [.. measurements];
        double weights = 0, sum = 0, deviceDb = double.PositiveInfinity;
        foreach (int i in on)
        {
            FitResidual residual = Study.Fit.Residuals[i];
            double ownDb2 = Math.Max(1e-6, (residual.Measurement.NoiseDb * residual.Measurement.NoiseDb) - (modelDb * modelDb));
            double weight = (1 - residual.ProbabilityBad) / ownDb2;
            weights += weight;
            sum += weight * residual.ResidualDb;
            deviceDb = Math.Min(deviceDb, Study.Fit.Devices[residual.Measurement.Device].SpreadDb);
        }

        double known = modelDb * modelDb * weights / (1 + (modelDb * modelDb * weights)); // of the model's variance
        double shiftDb = weights > 0 ? -known * sum / weights : 0;
        Measurement first = Measurements[on[0]];
        return new FittedLink(
            first.Transmitter.PositionIn(House),
            first.Receiver.PositionIn(House),
            shiftDb,
            Math.Min(modelDb, Math.Sqrt((modelDb * modelDb * (1 - known)) + (known * known * deviceDb * deviceDb))));
    }

    private static FitProblem ProblemOf(LinkModel model, Spreads spreads, IReadOnlyList<Measurement> measurements, out MeasuredLinks links)
    {
        IReadOnlyList<MaterialPrior> rows = HousePriors.Of(model.House, spreads);
        MeasuredLinks read = links = MeasuredLinks.Of(model, rows, measurements);
        string[] devices = [.. measurements.Select(measurement => measurement.Devices).Distinct(StringComparer.Ordinal)];
        Material[] materials = [.. HouseFabric.Of(model.House).DistinctBy(material => material.TableRow)];
        double[] wholeSpreads = [.. materials.Select(material => material.SpreadDb / material.Scale)];
        double[] nothing = new double[rows.Count], gradient = new double[rows.Count];
        return new FitProblem(
            read,
            rows,
            [.. devices.Select(name => new DevicePrior(name, spreads.DeviceOffsetDbm, spreads.DeviceDb))],
            [.. measurements.Select(AsFitted)],
            new BadMeasurements(spreads.BadMeasurementShare, spreads.BadMeasurementDb));

        FitMeasurement AsFitted(Measurement measurement, int i)
        {
            read.PathLossDb(read.OfMeasurement[i], nothing, gradient);
            return new FitMeasurement(
                read.OfMeasurement[i],
                Array.IndexOf(devices, measurement.Devices),
                measurement.LevelDbm,
                measurement.IsHeard,
                MeasurementNoise.Db(spreads, measurement.SampleCount, gradient, wholeSpreads));
        }
    }
}
