using LinkMargin.Engine.Fitting;
using LinkMargin.Engine.Geometry;
using LinkMargin.Engine.Houses;
using LinkMargin.Files.Houses.Keys;
using LinkMargin.Files.Problems;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Tables;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Measurements;

/// <summary>Reads a fitted file and checks it against the house it is applied to.</summary>
internal sealed class FittedReader(Source source, House house)
{
    /// <summary>The format of the files written now. Files of older versions without it are also read.</summary>
    internal const string Form = "linkmargin/fitted/1";

    private const string WriteAgain = "write the file again with 'linkmargin fit'";

    private static readonly string[] Keys = ["form", "fitted", "measurements", "readings", "materials", "devices", "correlations", "links"];
    private static readonly string[] MaterialKeys = ["name", "table", "shift", "table-spread", "spread"];
    private static readonly string[] DeviceKeys = ["name", "offset", "spread", "measurements", "readings"];
    private static readonly string[] LinkKeys = ["from", "to", "shift", "spread"];
    private static readonly string[] CorrelationKeys = ["between", "value"];

    private static readonly QuantityRange Shift = new(-TableLimits.Loss.Greatest, 300, "dB");
    private static readonly QuantityRange LinkShift = new(-200, 200, "dB");
    private static readonly QuantityRange Offset = new(-200, 200, "dBm");
    private static readonly QuantityRange Count = new(0, 1_000_000, "");
    private static readonly QuantityRange CorrelationRange = new(-1, 1, "");
    private static readonly QuantityRange AnySpread = new(0, 200, "dB");

    /// <summary>Table losses that differ by less are equal, since they are written with four decimals.</summary>
    private const double SameDb = 0.005;

    private readonly RowNames materialNames = new();

    /// <summary>Reads everything that is readable.</summary>
    public FittedLosses Read(MappingNode root)
    {
        MappingReader file = new(source, root, "a fitted file", Keys);
        file.CheckForm(Form);
        string? name = file.RequiredName("fitted");
        double? count = file.RequiredNumber(CountKey(file), Quantity.Plain, Count);
        List<FittedMaterial> materials = ReadMaterials(file);
        List<FittedDevice> devices = ReadDevices(file);
        Dictionary<(int, int), double> correlations = ReadCorrelations(file, materials);
        FittedLosses fitted = new(
            name ?? "", (int)(count ?? 0), materials, devices, (i, j) => correlations.GetValueOrDefault((Math.Min(i, j), Math.Max(i, j))))
        {
            Links = MeasuredLinks(file),
        };
        if (!fitted.AreCorrelationsPossible)
        {
            source.Error(file.MarkOf("correlations"), $"correlations: these values contradict each other; {WriteAgain}");
        }

        if (name is not null && name != house.Name)
        {
            source.Warning(file.MarkOf("fitted"), $"fitted: these losses were fitted for {Quote.Of(name)}, but the house is {Quote.Of(house.Name)}; check that it is the same house");
        }

        return fitted;
    }

    private List<FittedMaterial> ReadMaterials(MappingReader file)
    {
        Dictionary<string, double> tableDb = HouseFabric.Of(house)
            .DistinctBy(m => m.TableRow)
            .ToDictionary(m => m.TableRow, m => m.LossDb / m.Scale);
        List<FittedMaterial> materials = [];
        if (file.Has("materials") && file.Optional("materials") is SequenceNode { Items.Count: var count and > TableLimits.MostRows })
        {
            TooMany.Check(source, file, "materials", count, TableLimits.MostRows);
            return materials;
        }

        foreach (MappingReader row in Groups(file, "materials", "a fitted material", MaterialKeys))
        {
            string? name = materialNames.Read(row);
            double? table = row.RequiredNumber("table", Quantity.Decibels, TableLimits.Loss);
            double? shift = row.RequiredNumber("shift", Quantity.Decibels, Shift);
            double? tableSpread = row.RequiredNumber("table-spread", Quantity.Decibels, TableLimits.Spread);
            double? spread = row.RequiredNumber("spread", Quantity.Decibels, AnySpread);
            if (name is null || table is not { } loss || shift is not { } more || tableSpread is null || spread is null)
            {
                continue;
            }

            if (loss + more < -SameDb)
            {
                source.Error(row.MarkOf("shift"), $"shift: {Shift.Show(more)} would make the loss of '{name}', {Shift.Show(loss)} in the table, negative; {Shift.Show(-loss)} is the lowest allowed shift");
            }

            if (tableDb.TryGetValue(name, out double now) && Math.Abs(now - loss) > SameDb)
            {
                source.Warning(row.MarkOf("table"), $"table: the table loss of '{name}' was {Shift.Show(loss)} when this was fitted and is {Shift.Show(now)} now; the shift is added to the present table loss, so fit again");
            }

            materials.Add(new FittedMaterial(name, loss, tableSpread.Value, Math.Max(more, -loss), spread.Value));
        }

        if (materials.Count > 0 && !materials.Exists(m => tableDb.ContainsKey(m.Name)))
        {
            source.Error(file.MarkOf("materials"), $"materials: the house contains none of these; name the file that was fitted for this house");
        }

        return materials;
    }

    private List<FittedDevice> ReadDevices(MappingReader file)
    {
        Names names = new(source, "a device");
        List<FittedDevice> devices = [];
        foreach (MappingReader row in Groups(file, "devices", "a device", DeviceKeys))
        {
            string? name = row.RequiredName("name", DevicePair.LongestName);
            double? offset = row.RequiredNumber("offset", Quantity.LevelDbm, Offset);
            double? spread = row.RequiredNumber("spread", Quantity.Decibels, AnySpread);
            double? count = row.RequiredNumber(CountKey(row), Quantity.Plain, Count);
            if (name is not null)
            {
                names.Take(name, row.MarkOf("name"));
            }

            if (name is not null && offset is not null && spread is not null && count is not null)
            {
                devices.Add(new FittedDevice(name, offset.Value, spread.Value, (int)count.Value));
            }
        }

        return devices;
    }

    private List<FittedLink> MeasuredLinks(MappingReader file)
    {
        List<FittedLink> links = [];
        foreach (MappingReader row in file.OptionalGroups("links", "a link", LinkKeys))
        {
            Point3? from = End(row, "from"), to = End(row, "to");
            double? shift = row.RequiredNumber("shift", Quantity.Decibels, LinkShift);
            double? spread = row.RequiredNumber("spread", Quantity.Decibels, AnySpread);
            if (from is { } one && to is { } other && shift is not null && spread is not null)
            {
                links.Add(new FittedLink(one, other, shift.Value, spread.Value));
            }
        }

        return links;
    }

    // In metres from the house's origin and its lowest floor.
    private Point3? End(MappingReader row, string key)
    {
        if (row.Required(key) is not { } node || PlaceReader.Numbers(source, node, key, 3, "[x, y, z]") is not { } three)
        {
            return null;
        }

        double?[] metres = [.. three.Select(number => ValueReader.Length(source, number, key, HouseLimits.Coordinate))];
        return metres is [{ } x, { } y, { } z] ? new Point3(x, y, z) : null;
    }

    private Dictionary<(int First, int Second), double> ReadCorrelations(MappingReader file, List<FittedMaterial> materials)
    {
        Dictionary<(int, int), double> values = [];
        string[] names = [.. materials.Select(m => m.Name)];
        foreach (MappingReader row in Groups(file, "correlations", "a correlation", CorrelationKeys))
        {
            double? value = row.RequiredNumber("value", Quantity.Plain, CorrelationRange);
            IReadOnlyList<Node> items = row.RequiredItems("between");
            int[] places = [.. items.Select(item => PlaceOf(item, names)).OfType<int>()];
            if (row.Has("between") && (items.Count != 2 || (places.Length == 2 && places[0] == places[1])))
            {
                source.Error(row.MarkOf("between"), "between: write the names of two materials, [a, b]");
            }
            else if (places.Length == 2 && value is { } correlation)
            {
                values[(Math.Min(places[0], places[1]), Math.Max(places[0], places[1]))] = correlation;
            }
        }

        return values;
    }

    private int? PlaceOf(Node item, string[] names)
    {
        if (ValueReader.Name(source, item, "between") is not { } name)
        {
            return null;
        }

        int place = Array.IndexOf(names, name);
        if (place < 0 && !materialNames.Met.Contains(name))
        {
            source.Error(item.Mark, $"between: {Quote.Of(name)} is not a fitted material of this file; {source.Advice(name, names, "'materials' in this file")}");
        }

        return place < 0 ? null : place;
    }

    // Older versions wrote 'readings'.
    private static string CountKey(MappingReader group) => group.Has("readings") ? "readings" : "measurements";

    private static IEnumerable<MappingReader> Groups(MappingReader file, string key, string what, string[] keys)
    {
        file.Required(key);
        return file.OptionalGroups(key, what, keys);
    }
}
