using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Readings;

/// <summary>A house fitted to readings taken in it, with everything to be said of the fit.</summary>
public sealed class HouseFit
{
    private HouseFit(House house, IReadOnlyList<Reading> readings, ReadLinks links, FitStudy study) =>
        (House, Readings, Links, Study) = (house, readings, links, study);

    /// <summary>The house, as the tables say.</summary>
    public House House { get; }

    /// <summary>The readings, in the order of the fit's residuals.</summary>
    public IReadOnlyList<Reading> Readings { get; }

    /// <summary>The links they were taken on.</summary>
    public ReadLinks Links { get; }

    /// <summary>The fit, seen from all sides.</summary>
    public FitStudy Study { get; }

    /// <summary>What the fit has to say of the house.</summary>
    public FittedLosses Losses => FittedLosses.Of(Study.Fit, House);

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
        return new HouseFit(model.House, readings, links, FitStudy.Of(problem, links.DistancesMetres, model.Scene.Band.Equivalent));
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
