using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Links;
using LinkMargin.Engine.Links.Stored;
using MathNet.Numerics.LinearAlgebra;

namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// How a level depends on everything that is not known about a house: its slopes in independent unknowns of unit spread, with
/// the level of the devices as one more; and what has been learned, as the covariances with past measurements.
/// </summary>
internal sealed class LossVector
{
    private readonly Dictionary<int, double> slopes;
    private readonly List<double> learned = [];
    private readonly double device;

    internal LossVector(Dictionary<int, double> slopes, bool withDevice) => (this.slopes, device) = (slopes, withDevice ? 1 : 0);

    /// <summary>Covariance with another, given what was learned, dB².</summary>
    /// <param name="other">The other; it must have learned the same measurements.</param>
    /// <param name="deviceDb">Spread of the devices' level, dB.</param>
    internal double Dot(LossVector other, double deviceDb)
    {
        double sum = device * other.device * deviceDb * deviceDb;
        (Dictionary<int, double> few, Dictionary<int, double> many) =
            slopes.Count <= other.slopes.Count ? (slopes, other.slopes) : (other.slopes, slopes);
        foreach ((int unknown, double slope) in few)
        {
            if (many.TryGetValue(unknown, out double there))
            {
                sum += slope * there;
            }
        }

        for (int k = 0; k < Math.Min(learned.Count, other.learned.Count); k++)
        {
            sum -= learned[k] * other.learned[k];
        }

        return sum;
    }

    /// <summary>Adds an unknown.</summary>
    internal void Put(int unknown, double slope) => slopes[unknown] = slope;

    /// <summary>Adds a multiple of another; only before anything was learned.</summary>
    internal void Add(LossVector other, double times)
    {
        foreach ((int unknown, double slope) in other.slopes)
        {
            slopes[unknown] = slopes.GetValueOrDefault(unknown) + (times * slope);
        }
    }

    /// <summary>Learns a measurement.</summary>
    /// <param name="measurement">The measurement's vector as it was before it was taken.</param>
    /// <param name="deviceDb">Spread of the devices' level, dB.</param>
    /// <param name="scale">Spread of the measurement, its noise included, dB.</param>
    internal void Condition(LossVector measurement, double deviceDb, double scale) => learned.Add(Dot(measurement, deviceDb) / scale);

    /// <summary>A copy of its present state.</summary>
    internal LossVector Copy()
    {
        var copy = new LossVector(new Dictionary<int, double>(slopes), device > 0);
        copy.learned.AddRange(learned);
        return copy;
    }
}

/// <summary>
/// Turns stored links into vectors over the same unknowns: rows of the material table, each material in each place, and what the
/// model leaves out on each link.
/// </summary>
internal sealed class LossVectors(UncertaintyBasis basis)
{
    private readonly Dictionary<(int Material, int? Place), int> numbers = [];
    private readonly Dictionary<(string Spot, string Seat), int> links = [];

    /// <summary>How the level of a seat's own link depends on the unknowns, including what the model leaves out on it.</summary>
    internal LossVector OfSeat(StoredPaths stored, StoredLink link, LinkModel model, Spot spot, Seat seat, bool withDevice)
    {
        LossVector vector = Of(stored, link, withDevice);
        FittedLink? read = basis.Fitted?.Find(model.House.PositionOf(spot), model.House.PositionOf(seat));
        if (!links.TryGetValue((spot.Name, seat.Name), out int number))
        {
            links.Add((spot.Name, seat.Name), number = -1 - links.Count);
        }

        vector.Put(number, read?.SpreadDb ?? basis.Spreads.ModelDb);
        return vector;
    }

    /// <summary>How the level of a link depends on the unknowns, at the tables' losses.</summary>
    internal LossVector Of(StoredPaths stored, StoredLink link, bool withDevice)
    {
        double[] gradient = new double[stored.Parameters.Count];
        link.PathLossDb(new double[gradient.Length], gradient);
        var shared = new SharedLosses(stored.Materials, basis);
        Vector<double> rows = Vector<double>.Build.DenseOfEnumerable(shared.ByRow(gradient).Select((slope, row) => -slope * shared.SpreadsDb[row]));
        if (shared.Together is { } together)
        {
            rows = together.LeftMultiply(rows);
        }

        var slopes = new Dictionary<int, double>();
        for (int row = 0; row < rows.Count; row++)
        {
            Put((-1 - row, null), rows[row]);
        }

        double[] own = PlaceSpreads.Of(stored, basis);
        for (int p = 0; p < gradient.Length; p++)
        {
            if (stored.Parameters[p] is { Place: { } place } parameter)
            {
                Put((parameter.Material, place), -gradient[p] * own[parameter.Material]);
            }
        }

        return new LossVector(slopes, withDevice);

        void Put((int Material, int? Place) unknown, double slope)
        {
            if (slope != 0)
            {
                if (!numbers.TryGetValue(unknown, out int number))
                {
                    numbers.Add(unknown, number = numbers.Count);
                }

                slopes[number] = slope;
            }
        }
    }
}
