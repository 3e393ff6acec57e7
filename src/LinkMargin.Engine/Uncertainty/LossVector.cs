namespace LinkMargin.Engine.Uncertainty;

/// <summary>
/// How a level goes with everything that is not known of a house: its slopes in independent unknowns of unit spread, with
/// the level of the devices as one more; and what has been learned, as the covariances with past measurements.
/// </summary>
internal sealed class LossVector
{
    private readonly Dictionary<int, double> slopes;
    private readonly List<double> learned = [];
    private readonly double device;

    internal LossVector(Dictionary<int, double> slopes, bool withDevice) => (this.slopes, device) = (slopes, withDevice ? 1 : 0);

    /// <summary>Covariance with another, given what was learned, dB².</summary>
    /// <param name="other">The other; it must have learned as much.</param>
    /// <param name="deviceDb">How far the devices' level may be out, dB.</param>
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

    /// <summary>Adds so many times another, before anything was learned.</summary>
    internal void Add(LossVector other, double times)
    {
        foreach ((int unknown, double slope) in other.slopes)
        {
            slopes[unknown] = slopes.GetValueOrDefault(unknown) + (times * slope);
        }
    }

    /// <summary>Learns a measurement.</summary>
    /// <param name="measurement">The measurement's vector as it was before it was taken.</param>
    /// <param name="deviceDb">How far the devices' level may be out, dB.</param>
    /// <param name="scale">Spread of the measurement, its noise included, dB.</param>
    internal void Condition(LossVector measurement, double deviceDb, double scale) => learned.Add(Dot(measurement, deviceDb) / scale);

    /// <summary>The same as it is now.</summary>
    internal LossVector Copy()
    {
        var copy = new LossVector(new Dictionary<int, double>(slopes), device > 0);
        copy.learned.AddRange(learned);
        return copy;
    }
}
