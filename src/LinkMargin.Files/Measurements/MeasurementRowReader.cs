using System.Text.RegularExpressions;
using LinkMargin.Engine.Fitting;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>Reads each line of a measurements file.</summary>
internal sealed partial class MeasurementRowReader(MeasurementHeader header, MeasurementPlaces places, Source source)
{
    /// <summary>The text for a level that was not heard.</summary>
    public const string NotHeard = "not heard";

    private readonly Dictionary<string, string> looks = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>How many lines still have no level.</summary>
    public int Untaken { get; private set; }

    /// <summary>Reads a line; null if it has no level yet, or, with errors recorded, if it cannot be read.</summary>
    public MeasurementRow? Read(IReadOnlyList<CsvCell> line)
    {
        if (line.Count > header.ColumnCount && line.Skip(header.ColumnCount).FirstOrDefault(cell => cell.Text.Length > 0) is { Text: not null } more)
        {
            source.Error(more.Mark, FormattableString.Invariant(
                $"this line has {line.Count} fields, but there are {header.ColumnCount} headings; a decimal comma looks like the comma between fields, so write decimal points, or separate the fields with semicolons"));
            return null;
        }

        if (header.Find(line, MeasurementColumn.Received) is not { } received)
        {
            Untaken++;
            return null;
        }

        MeasurementEnd? transmitter = places.Read(header, line, MeasurementColumn.Transmitter, MeasurementColumn.TransmitterPlace);
        MeasurementEnd? receiver = places.Read(header, line, MeasurementColumn.Receiver, MeasurementColumn.ReceiverPlace);
        DevicePair? devices = Devices(line);
        double? bound = header.Find(line, MeasurementColumn.NotHeardBelow) is { } written ? Level(written, MeasurementColumn.NotHeardBelow) : null;
        bool isHeard = !Silence().IsMatch(received.Text);
        double? level = isHeard ? Level(received, MeasurementColumn.Received) : null;
        if (!isHeard && BoundIn(received.Text) is { Length: > 0 } inside)
        {
            bound = Level(received with { Text = inside }, MeasurementColumn.Received);
            isHeard = bound is null;
        }

        return transmitter is null || receiver is null || devices is null || (isHeard && level is null)
            ? null
            : new MeasurementRow(transmitter, receiver, devices, level, bound, received.Mark);
    }

    private DevicePair? Devices(IReadOnlyList<CsvCell> line)
    {
        string device = header.Find(line, MeasurementColumn.Device)?.Text ?? "", sender = header.Find(line, MeasurementColumn.Sender)?.Text ?? "";
        if (device.Length == 0 && header.Has(MeasurementColumn.Device))
        {
            source.Error(line[0].Mark, "device: this line does not say what measured the level; write any name, the same for all measurements of one device");
            return null;
        }

        foreach (string name in new[] { device, sender }.Where(name => name.Length > 0))
        {
            if (NameText.Fault(name) is { } fault)
            {
                source.Error(line[0].Mark, $"device: {Quote.Of(name)} {fault}");
                return null;
            }
        }

        if (Math.Max(device.Length, sender.Length) > ValueReader.LongestName)
        {
            source.Error(line[0].Mark, FormattableString.Invariant($"device: {Quote.Of(device.Length > sender.Length ? device : sender)} is too long for a name; at most {ValueReader.LongestName} characters are allowed"));
            return null;
        }

        DevicePair pair = new(sender, device);
        string first = looks.GetValueOrDefault(NameText.Look(pair.Name), pair.Name);
        looks.TryAdd(NameText.Look(pair.Name), pair.Name);
        if (!first.Equals(pair.Name, StringComparison.OrdinalIgnoreCase))
        {
            source.Error(line[0].Mark, $"device: {Quote.Of(pair.Name)} differs from a device above only by invisible characters; write one name for one device");
            return null;
        }

        return pair;
    }

    private double? Level(CsvCell cell, MeasurementColumn column)
    {
        string text = DecimalComma.AsPoint(cell.Text.Replace('\u2212', '-'));
        Parsed parsed = Quantity.LevelDbm.Parse(text);
        if (parsed.Fault is not null && !text.Any(char.IsAsciiDigit))
        {
            source.Error(cell.Mark, $"{column.Heading}: {Quote.Of(cell.Text)} is neither a level nor '{NotHeard}'; write, for example, -63 dBm, {NotHeard}, or < -92 dBm");
            return null;
        }

        if (parsed.Fault is null && parsed.Value > 0)
        {
            string meant = MeasurementLimits.Received.Contains(-parsed.Value) ? $"; did you mean {MeasurementLimits.Received.Show(-parsed.Value)}?" : "";
            source.Error(cell.Mark, $"{column.Heading}: {Quote.Of(cell.Text)} is higher than any device in a house receives; write the level in dBm, not in bars or per cent; {MeasurementLimits.Received} is allowed{meant}");
            return null;
        }

        return ValueReader.Measured(
            source, new ScalarNode(cell.Mark, cell.Text, true), column.Heading, MeasurementLimits.Received, Quantity.LevelDbm.What, _ => parsed);
    }

    private static string BoundIn(string text) => Silence().Match(text).Groups["bound"].Value.Trim();

    [GeneratedRegex(@"^(not[ _-]?heard( *(<|below) *(?<bound>.+))?|< *(?<bound>.+))$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Silence();
}

/// <summary>One line with a level, or with 'not heard'.</summary>
/// <param name="Transmitter">Where the transmitter was.</param>
/// <param name="Receiver">Where the receiver was.</param>
/// <param name="Devices">The transmitting and the receiving device.</param>
/// <param name="LevelDbm">The level, dBm; null if nothing was heard.</param>
/// <param name="BoundDbm">The level below which nothing is heard, dBm; null if the line does not say.</param>
/// <param name="Mark">The position of the level.</param>
internal sealed record MeasurementRow(
    MeasurementEnd Transmitter, MeasurementEnd Receiver, DevicePair Devices, double? LevelDbm, double? BoundDbm, Mark Mark);
