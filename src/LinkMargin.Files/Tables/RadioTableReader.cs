using LinkMargin.Engine.Houses;
using LinkMargin.Engine.Quantities;
using LinkMargin.Files.Quantities;
using LinkMargin.Files.Yaml;

namespace LinkMargin.Files.Tables;

/// <summary>Reads the table of radios.</summary>
internal static class RadioTableReader
{
    /// <summary>Whether a gain includes the polarisation mismatch loss; the default is no. Used here and in house files.</summary>
    internal const string MismatchKey = "gain-includes-mismatch";

    private static readonly string[] RowKeys =
        ["name", "what", SearchWords.AlsoKey, "transmit", "gain", MismatchKey, "sensitivity", "hand", "spread", "source"];

    /// <summary>Reads the valid radios in order.</summary>
    public static OrderedDictionary<string, Radio> Read(MappingReader table, SearchWords words)
    {
        RowNames names = new();
        OrderedDictionary<string, Radio> rows = [];
        foreach (MappingReader row in TableRows.Of(table, "radios", "a radio", RowKeys))
        {
            string? name = names.Read(row);
            string? what = row.RequiredText("what");
            words.Read(row, name);
            double? transmit = row.RequiredNumber("transmit", Quantity.LevelDbm, TableLimits.Transmit);
            double? gain = row.RequiredNumber("gain", Quantity.Gain, TableLimits.Gain);
            bool includesMismatch = row.OptionalFlag(MismatchKey) ?? false;
            double? sensitivity = row.RequiredNumber("sensitivity", Quantity.LevelDbm, TableLimits.Sensitivity);
            double? hand = row.RequiredNumber("hand", Quantity.Decibels, TableLimits.Hand);
            double? spread = row.RequiredNumber("spread", Quantity.Decibels, TableLimits.Spread);
            string? source = row.RequiredText("source");
            if (name is not null && transmit is not null && gain is not null && sensitivity is not null && hand is not null
                && spread is not null && source is not null)
            {
                rows.Add(name, new Radio(
                    name,
                    new PowerLevel(transmit.Value),
                    gain.Value,
                    new PowerLevel(sensitivity.Value),
                    hand.Value,
                    spread.Value,
                    source) { Description = what ?? "", GainIncludesMismatch = includesMismatch });
            }
        }

        return rows;
    }
}
