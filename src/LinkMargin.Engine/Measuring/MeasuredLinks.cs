using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;

namespace LinkMargin.Engine.Measuring;

/// <summary>
/// The links that measurements were taken on, as functions of how much more each row of the material table loses in the house.
/// Each is traced once and evaluated on stored paths. The person who measured turned around, so their body counts as a mean
/// over all directions, and the rest of its effect is part of the devices' offset.
/// </summary>
public sealed class MeasuredLinks : IPathLossModel
{
    private readonly IReadOnlyList<(StoredPaths Paths, StoredLink Link)> links;
    private readonly int[] rowOf; // by the house's material; −1 for none
    private readonly double[] scaleOf;

    private MeasuredLinks(
        LinkModel model,
        IReadOnlyList<MaterialPrior> rows,
        IReadOnlyList<(StoredPaths Paths, StoredLink Link)> links,
        IReadOnlyList<int> ofMeasurement,
        IReadOnlyList<double> distancesMetres)
    {
        (this.links, OfMeasurement, DistancesMetres, ParameterCount) = (links, ofMeasurement, distancesMetres, rows.Count);
        IReadOnlyList<Material> materials = model.Scene.Materials;
        string[] names = [.. rows.Select(row => row.Name)];
        rowOf = [.. materials.Select(material => Array.IndexOf(names, material.TableRow))];
        scaleOf = [.. materials.Select(material => material.Scale)];
    }

    /// <inheritdoc/>
    public int ParameterCount { get; }

    /// <summary>The link of each measurement.</summary>
    public IReadOnlyList<int> OfMeasurement { get; }

    /// <summary>Length of each link, metres.</summary>
    public IReadOnlyList<double> DistancesMetres { get; }

    /// <summary>Traces the links of some measurements.</summary>
    /// <param name="model">The model of the house.</param>
    /// <param name="rows">The rows of the material table that it is made of.</param>
    /// <param name="measurements">The measurements.</param>
    public static MeasuredLinks Of(LinkModel model, IReadOnlyList<MaterialPrior> rows, IReadOnlyList<Measurement> measurements)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(measurements);
        var links = new List<(StoredPaths, StoredLink)>();
        var distances = new List<double>();
        int[] ofMeasurement = new int[measurements.Count];
        foreach (var sent in measurements.Select((measurement, i) => (measurement, i)).GroupBy(r => r.measurement.Transmitter.PositionIn(model.House)))
        {
            MeasurementEnd end = sent.First().measurement.Transmitter;
            Point3[] places = [.. sent.Select(r => r.measurement.Receiver.PositionIn(model.House)).Distinct()];
            var paths = StoredPaths.Of(model, new Spot(end.Name, end.LevelIndex, end.Plan, end.HeightMetres), places);
            foreach ((Measurement measurement, int i) in sent)
            {
                ofMeasurement[i] = links.Count + Array.IndexOf(places, measurement.Receiver.PositionIn(model.House));
            }

            links.AddRange(paths.Links.Select(link => (paths, link)));
            distances.AddRange(places.Select(place => place.DistanceTo(sent.Key)));
        }

        return new MeasuredLinks(model, rows, links, ofMeasurement, distances);
    }

    /// <inheritdoc/>
    public double PathLossDb(int link, ReadOnlySpan<double> shiftsDb, Span<double> gradient)
    {
        (StoredPaths paths, StoredLink stored) = links[link];
        double[] shifts = new double[paths.Parameters.Count], slopes = new double[shifts.Length];
        for (int m = 0; m < rowOf.Length; m++)
        {
            shifts[m] = rowOf[m] < 0 ? 0 : shiftsDb[rowOf[m]] * scaleOf[m];
        }

        double lossDb = stored.PathLossDb(shifts, slopes);
        gradient.Clear();
        for (int m = 0; m < rowOf.Length; m++)
        {
            if (rowOf[m] >= 0)
            {
                gradient[rowOf[m]] += slopes[m] * scaleOf[m];
            }
        }

        return lossDb;
    }
}
