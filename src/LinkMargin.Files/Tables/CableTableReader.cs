using LinkMargin.Engine.Cables;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the table of cables.</summary>
internal static class CableTableReader
{
    private static readonly string[] RowKeys = ["name", "what", "use", "diameter", "bend", "directional", "end", "reach", "stock", "pull", "source"];
    private static readonly string[] ReachKeys = ["rate", "sure", "most"];

    private static readonly Dictionary<string, CableUse> Uses = new()
    {
        ["picture"] = CableUse.Picture, ["lead"] = CableUse.Lead, ["other"] = CableUse.Other,
    };

    private static readonly Quantity Newtons = new("a force in newtons", "110 N", ["N"]);

    /// <summary>Reads the valid rows in order.</summary>
    public static IReadOnlyList<CableKind> Read(MappingReader table)
    {
        RowNames names = new();
        List<CableKind> rows = [];
        foreach (MappingReader row in TableRows.Of(table, "cables", "a cable", RowKeys))
        {
            string? name = names.Read(row);
            string? what = row.RequiredText("what");
            CableUse? use = row.RequiredWord("use", Uses, "a use of a cable");
            double? diameter = row.RequiredLength("diameter", TableLimits.CableDiameter);
            double? bend = row.RequiredLength("bend", TableLimits.CableBend);
            bool? directional = row.Required("directional") is { } flag ? ValueReader.Flag(row.Source, flag, "directional") : null;
            double[]? end = Lengths(row, "end", row.RequiredItems("end"), TableLimits.CableEnd);
            if (end is not null && end.Length != 2)
            {
                row.Source.Error(row.MarkOf("end"), "end: write its width and height, [21 mm, 12 mm]");
                end = null;
            }

            List<Reach>? reaches = Reaches(row, use == CableUse.Picture);
            IReadOnlyList<Node> sold = row.OptionalItems("stock");
            double[]? stock = Lengths(row, "stock", sold, TableLimits.CableLength);
            double? pull = row.OptionalNumber("pull", Newtons, TableLimits.CablePull);
            string? source = row.RequiredText("source");
            if (stock is { Length: > 0 } && reaches is { Count: > 0 } && stock.Min() > reaches.Max(reach => reach.MostMetres))
            {
                row.Source.Error(row.MarkOf("stock"), "stock: even the shortest length is longer than the cable reaches at any rate; fix 'stock' or 'reach'");
            }

            if (name is not null && use is { } known && diameter is { } thick && bend is { } radius && directional is { } isDirectional
                && end is not null && reaches is not null && stock is not null && source is not null)
            {
                rows.Add(new CableKind(name, known, thick, radius, isDirectional, new PlugSize(end[0], end[1]), source)
                {
                    Description = what ?? "", Reaches = reaches, Stock = [.. stock.Zip(sold, (metres, item) => new StockLength(metres, AsSold(item, metres))).DistinctBy(length => length.Metres).OrderBy(length => length.Metres)], PullNewtons = pull,
                });
            }
        }

        return rows;
    }

    private static List<Reach>? Reaches(MappingReader row, bool hasRates)
    {
        List<Reach> reaches = [];
        bool isWhole = true;
        foreach (MappingReader reach in row.OptionalGroups("reach", "a reach", ReachKeys))
        {
            double? rate = hasRates && reach.Required("rate") is { } node ? Rate(row.Source, node, "rate") : 0;
            double? sure = reach.RequiredLength("sure", TableLimits.CableLength), most = reach.RequiredLength("most", TableLimits.CableLength);
            if (most < sure)
            {
                reach.Source.Error(reach.MarkOf("most"), "most: this is shorter than 'sure'; write at least the length under 'sure'");
            }

            isWhole &= rate is not null && sure is not null && most >= sure;
            reaches.Add(new Reach(rate ?? 0, sure ?? 0, most ?? 0));
        }

        if (hasRates && !row.Has("reach"))
        {
            row.Source.Error(row.Mark, "a video cable needs its 'reach': how long it may be at a rate");
        }

        return isWhole ? [.. reaches.OrderBy(reach => reach.Gbps)] : null;
    }

    /// <summary>A bit rate, in Gbit/s.</summary>
    internal static double? Rate(Source source, Node node, string label) =>
        ValueReader.Measured(source, node, label, TableLimits.LinkRate, "a rate in Gbit/s", RateText.Parse);

    private static string AsSold(Node item, double metres) => item is ScalarNode { Text: var text } && text.Any(char.IsLetter) ? text.Trim() : LengthFormat.Metric.Exact(metres);

    private static double[]? Lengths(MappingReader row, string key, IReadOnlyList<Node> items, QuantityRange range)
    {
        double?[] lengths = [.. items.Select(item => ValueReader.Length(row.Source, item, key, range))];
        return lengths.Any(length => length is null) ? null : [.. lengths.Select(length => length!.Value)];
    }
}
