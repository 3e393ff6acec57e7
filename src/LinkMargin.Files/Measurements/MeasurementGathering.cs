using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>Combines the lines of a file: bounds for what was not heard, repeated measurements, and warnings about the whole.</summary>
internal sealed class MeasurementGathering(House house, Source source)
{
    /// <summary>The measurements, in the order of each link's first line.</summary>
    public IReadOnlyList<Measurement> Gather(IReadOnlyList<MeasurementRow> rows)
    {
        List<Measurement> measurements = [];
        foreach (IGrouping<DevicePair, MeasurementRow> pair in rows.GroupBy(row => row.Devices))
        {
            measurements.AddRange(OfPair(pair.Key.Name, [.. pair]));
        }

        Measurement[] inOrder = [.. measurements.OrderBy(measurement => measurement.Lines[0])];
        SayWhoIsAlone(inOrder);
        return inOrder;
    }

    private IEnumerable<Measurement> OfPair(string name, MeasurementRow[] rows)
    {
        double? weakest = rows.Min(row => row.LevelDbm);
        foreach (MeasurementRow row in rows.Where(row => row.BoundDbm > weakest))
        {
            source.Warning(row.Mark, FormattableString.Invariant(
                $"this line says that {name} hears nothing below {row.BoundDbm:0.#} dBm, but another line has {weakest:0.#} dBm from it; check both"));
        }

        bool isReportedOnce = false;
        List<(MeasurementRow Row, double Bound)> known = [];
        foreach (MeasurementRow row in rows)
        {
            // A device that once showed this level can hear it; so a level that it did not hear must have been lower.
            double? bound = row.BoundDbm ?? weakest;
            if (row.LevelDbm is null && bound is null && !isReportedOnce)
            {
                source.Error(row.Mark, $"received: {name} heard nothing at all in this file, so its sensitivity is unknown; write the level below which it hears nothing, such as < -92 dBm");
                isReportedOnce = true;
            }

            known.Add((row, bound ?? 0));
        }

        return known.GroupBy(k => (End(k.Row.Transmitter), End(k.Row.Receiver))).Select(group => OfLink(name, [.. group])).OfType<Measurement>();
    }

    private Measurement? OfLink(string name, (MeasurementRow Row, double Bound)[] rows)
    {
        MeasurementRow first = rows[0].Row;
        Point3 from = first.Transmitter.PositionIn(house), to = first.Receiver.PositionIn(house);
        if (from.DistanceTo(to) < MeasurementLimits.OnePlaceMetres)
        {
            source.Error(first.Mark, $"{Quote.Of(first.Transmitter.Name)} and {Quote.Of(first.Receiver.Name)} are at the same place, so there is no link between them; fix one of the two");
            return null;
        }

        double[] heard = [.. rows.Select(r => r.Row.LevelDbm).OfType<double>()];
        double[] bounds = [.. rows.Where(r => r.Row.LevelDbm is null).Select(r => r.Bound)];
        (double level, bool isHeard, int samples) = PowerMean.Of(heard, bounds);
        if (rows.Length >= PowerMean.MostEqual && isHeard && samples == 1)
        {
            source.Warning(first.Mark, FormattableString.Invariant(
                $"{rows.Length} lines from here on have the same level for the same link with {name}; they count as one measurement, because fading would make independent measurements differ"));
        }

        return new Measurement(first.Transmitter, first.Receiver, name, level, isHeard)
        {
            SampleCount = samples,
            Lines = [.. rows.Select(r => r.Row.Mark.Line)],
        };
    }

    /// <summary>Warns about a device with only one measurement, which cannot be compared with any other.</summary>
    private void SayWhoIsAlone(IReadOnlyList<Measurement> measurements)
    {
        string[] names = [.. measurements.Select(r => r.Devices).Distinct()];
        foreach (IGrouping<string, Measurement> pair in measurements.GroupBy(r => r.Devices).Where(pair => pair.Count() == 1))
        {
            string meant = NearestWord.Find(pair.Key, names.Where(n => n != pair.Key)) is { } near ? $"; did you mean '{near}'?" : "";
            source.Warning(new Mark(pair.First().Lines[0], 1), $"{Quote.Of(pair.Key)} has only this one measurement, which sets its own offset and says almost nothing about the house{meant}");
        }
    }

    /// <summary>Ends within a millimetre count as one place.</summary>
    private static (int Level, double X, double Y, double Height) End(MeasurementEnd end) =>
        (end.LevelIndex, Math.Round(end.Plan.X, 3), Math.Round(end.Plan.Y, 3), Math.Round(end.HeightMetres, 3));
}

/// <summary>The transmitting and the receiving device. Case does not matter.</summary>
/// <param name="Sender">The transmitting device; empty if the file does not say.</param>
/// <param name="Device">The receiving device; empty if the file does not say.</param>
internal sealed record DevicePair(string Sender, string Device)
{
    private const string Between = " to ";

    /// <summary>Greatest length of a pair's name.</summary>
    public static readonly int LongestName = (2 * ValueReader.LongestName) + Between.Length;

    /// <summary>The name of the pair.</summary>
    public string Name => (Sender.Length, Device.Length) switch
    {
        (0, 0) => "device",
        (0, _) => Device,
        (_, 0) => Sender,
        _ => Sender + Between + Device,
    };

    /// <inheritdoc/>
    public bool Equals(DevicePair? other) => other is not null && Name.Equals(other.Name, StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Name);
}
